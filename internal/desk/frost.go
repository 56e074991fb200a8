package desk

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/frost"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/words"
)

// FrostOptions say what is asked of frost and heat.
type FrostOptions struct {
	Minimum *float64          // tonight's in the open, as somebody tells it [C]; nil: as forecast or drawn
	Stages  map[string]string // stages of blossom that are told, by planting or feature
	Seed    uint64
	Years   int // futures; 0: as the outlook
}

// The range in which a minimum can be told [C].
const (
	coldestTold = -40
	mildestTold = 30
)

// FrostResult is what frost and heat do from tonight on. An evening names its night;
// spreads are ten values from low to high, those that 5, 15 and so on to 95 of a hundred
// futures do not pass.
type FrostResult struct {
	Today    cal.Date      `json:"today"`
	Futures  int           `json:"futures"`
	MinimumC *float64      `json:"minimum_c"` // told for tonight
	Sites    []FrostSite   `json:"sites"`
	Beds     []FrostBed    `json:"beds"`
	Ahead    []FrostAhead  `json:"ahead"`
	Heat     []FrostHeat   `json:"heat"`
	Sowings  []FrostSowing `json:"sowings"`
	Fruit    []FrostFruit  `json:"fruit"`

	Household string         `json:"-"`
	Lead      []words.Phrase `json:"-"`
	ID        string         `json:"-"`
	Gear      bool           `json:"-"` // covers are owned
	Makeshift bool           `json:"-"` // a bed is at risk tonight for which no cover is owned, free and of use
}

// FrostSite is the cold to come at a site.
type FrostSite struct {
	Site       string       `json:"site"`
	Name       string       `json:"name"`
	Nights     []FrostNight `json:"nights"`
	Weeks      []FrostWeek  `json:"weeks"`
	LastFrost  *FrostDay    `json:"last_frost"`
	FirstFrost *FrostDay    `json:"first_frost"`
	Says       words.Phrase `json:"-"` // of the last and the first frost
}

// FrostNight is a night in the open.
type FrostNight struct {
	Evening  cal.Date   `json:"evening"`
	C        frost.Tens `json:"c"`
	Frost    float64    `json:"frost"`
	Forecast bool       `json:"forecast"`
}

// FrostWeek is a run of nights; its spread is that of the coldest.
type FrostWeek struct {
	First cal.Date   `json:"first"`
	Last  cal.Date   `json:"last"`
	C     frost.Tens `json:"c"`
	Frost float64    `json:"frost"`
}

// FrostDay is a day that something comes in the futures.
type FrostDay struct {
	P10   cal.Date `json:"p10"`
	P50   cal.Date `json:"p50"`
	P90   cal.Date `json:"p90"`
	Share float64  `json:"share"`
}

// FrostOf works out what frost and heat do in a holding.
func FrostOf(h *holding.Holding, o FrostOptions) (*FrostResult, error) {
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed, Years: o.Years})
	if err != nil {
		return nil, err
	}
	seen, err := frost.See(s, outlook.NewMemory())
	if err != nil {
		return nil, err
	}
	return frostResult(&asked{holding: h, setting: s}, seen, o)
}

// frostResult says what the engine answers of what was seen.
func frostResult(a *asked, seen *frost.Seen, o FrostOptions) (*FrostResult, error) {
	if o.Minimum != nil && !(*o.Minimum >= coldestTold && *o.Minimum <= mildestTold) {
		return nil, fault.New(fault.OutOfRange, "desk.frost_minimum", words.Args{"given": *o.Minimum, "low": coldestTold, "high": mildestTold})
	}
	answer, err := seen.Answer(frost.Question{Minimum: o.Minimum, Stages: o.Stages, Seen: blossomSeen(a.holding, a.setting.Today)})
	if err != nil {
		return nil, err
	}
	r := &FrostResult{Today: answer.Today, Futures: answer.Futures, MinimumC: o.Minimum, Household: a.holding.Name, ID: a.holding.ID, Gear: len(a.holding.Gear) > 0,
		Sites: []FrostSite{}, Beds: []FrostBed{}, Ahead: []FrostAhead{}, Heat: []FrostHeat{}, Sowings: []FrostSowing{}, Fruit: []FrostFruit{}}
	n := &frostNamer{newNamer(a), r}
	for i := range answer.Sites {
		r.Sites = append(r.Sites, n.frostSite(&answer.Sites[i]))
	}
	for i := range answer.Beds {
		r.Beds = append(r.Beds, n.frostBed(&answer.Beds[i]))
	}
	for i := range answer.Ahead {
		r.Ahead = append(r.Ahead, n.setOut(&answer.Ahead[i]))
	}
	for i := range answer.Heat {
		r.Heat = append(r.Heat, n.hot(&answer.Heat[i]))
	}
	for i := range answer.Sowings {
		r.Sowings = append(r.Sowings, n.sleeper(&answer.Sowings[i]))
	}
	for i := range answer.Fruit {
		r.Fruit = append(r.Fruit, n.blossom(&answer.Fruit[i]))
	}
	for i := range r.Beds {
		r.Makeshift = r.Makeshift || r.Beds[i].Lay == nil && len(r.Beds[i].Do) > 0
	}
	r.Lead = frostLead(r)
	return r, nil
}

// frostNamer says what frost and heat do.
type frostNamer struct {
	*namer
	r *FrostResult
}

func (n *frostNamer) frostSite(s *frost.Site) FrostSite {
	out := FrostSite{Site: s.Place.ID, Name: s.Place.Name, Nights: []FrostNight{}, Weeks: []FrostWeek{}, LastFrost: frostDay(s.Last), FirstFrost: frostDay(s.First)}
	if out.Name == "" {
		out.Name = out.Site
	}
	for _, x := range s.Nights {
		out.Nights = append(out.Nights, FrostNight{x.Evening, x.C, x.Frost, x.Told})
	}
	for _, x := range s.Weeks {
		out.Weeks = append(out.Weeks, FrostWeek{x.First, x.Last, x.C, x.Frost})
	}
	out.Says = frostsToCome(out.LastFrost, out.FirstFrost)
	return out
}

func frostDay(d *frost.Dates) *FrostDay {
	if d == nil {
		return nil
	}
	return &FrostDay{d.P10, d.P50, d.P90, d.Share}
}

// sureFrost is the share of the futures from which a frost is told without it.
const sureFrost = 0.95

// frostsToCome tells when the last frost of this side of summer is past, else when the
// first comes.
func frostsToCome(last, first *FrostDay) words.Phrase {
	next, key, perhaps := last, "desk.frost_last", "desk.frost_last_perhaps"
	if last == nil {
		next, key, perhaps = first, "desk.frost_first", "desk.frost_first_perhaps"
	}
	if next == nil {
		return words.P("desk.frost_never", nil)
	}
	if next.Share < sureFrost {
		key = perhaps
	}
	return words.P(key, words.Args{"early": next.P10, "half": next.P50, "late": next.P90, "share": next.Share})
}
