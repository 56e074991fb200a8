package desk

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/frost"
	"garner/internal/growth"
	"garner/internal/words"
)

// FrostBed is what stands on a bed in the nights to come.
type FrostBed struct {
	Bed    string          `json:"bed"`
	Name   string          `json:"name"`
	Site   string          `json:"site"`
	Under  string          `json:"under"` // tonight
	Nights []FrostBedNight `json:"nights"`
	Plants []FrostPlant    `json:"plants"`
	Weeks  []FrostBedWeek  `json:"weeks"`
	Lay    *FrostSave      `json:"lay"`     // tonight
	Soon   bool            `json:"at_risk"` // in one of the nights told one by one

	Do    []words.Phrase `json:"-"` // by dusk
	Says  []words.Phrase `json:"-"` // of the nights after tonight
	Later []words.Phrase `json:"-"` // of the weeks after those
}

// FrostBedNight is a night under what lies over a bed.
type FrostBedNight struct {
	Evening cal.Date    `json:"evening"`
	Under   string      `json:"under"`
	C       frost.Tens  `json:"c"`
	LiftC   float64     `json:"lift_c"`
	Odds    float64     `json:"odds"`
	Saves   []FrostSave `json:"saves"`
}

// FrostSave is a cover that makes a bed safer.
type FrostSave struct {
	Lay   string  `json:"lay"`
	Under string  `json:"under"`
	LiftC float64 `json:"lift_c"`
	Odds  float64 `json:"odds"` // that are left
}

// FrostPlant is a planting on a bed.
type FrostPlant struct {
	Planting string    `json:"planting"`
	Name     string    `json:"name"`
	Crop     string    `json:"crop"`
	Use      string    `json:"use"`
	Stage    string    `json:"stage"`
	AgeD     float64   `json:"age_d"`
	Harden   float64   `json:"hardened"`
	Exposed  bool      `json:"exposed"`
	KillC    float64   `json:"kill_c"`
	FirstC   float64   `json:"first_c"`
	Tender   bool      `json:"tender"`
	From     cal.Date  `json:"from"` // the evening from which it is there
	Odds     []float64 `json:"odds"`
	Lost     []float64 `json:"lost"`

	Says []words.Phrase `json:"-"`
}

// FrostBedWeek is a run of nights in which something is at risk.
type FrostBedWeek struct {
	First     cal.Date `json:"first"`
	Last      cal.Date `json:"last"`
	Odds      float64  `json:"odds"`
	Plantings []string `json:"plantings"`
}

// wholeC rounds a temperature to half degrees: nothing here is known more finely.
func wholeC(c float64) float64 { return math.Round(2*c) / 2 }

func (n *frostNamer) frostBed(b *frost.Bed) FrostBed {
	out := FrostBed{Bed: b.Place.ID, Name: n.bed(b.Place.ID), Site: b.Place.Site, Under: string(b.Nights[0].Under), Nights: []FrostBedNight{}, Plants: []FrostPlant{}, Weeks: []FrostBedWeek{}}
	for _, x := range b.Nights {
		night := FrostBedNight{x.Evening, string(x.Under), x.C, x.LiftC, x.Odds, []FrostSave{}}
		for k := range x.Saves {
			night.Saves = append(night.Saves, saveOf(&x.Saves[k]))
		}
		out.Nights = append(out.Nights, night)
		out.Soon = out.Soon || x.Odds >= frost.Least
	}
	for i := range b.Plants {
		out.Plants = append(out.Plants, n.frostPlant(&b.Plants[i]))
	}
	for _, w := range b.Weeks {
		out.Weeks = append(out.Weeks, FrostBedWeek{w.First, w.Last, w.Odds, w.Plantings})
	}
	if b.Tonight != nil {
		s := saveOf(b.Tonight)
		out.Lay = &s
	}
	out.Do, out.Says, out.Later = n.byDusk(&out, b), nightsAfter(&out), n.later(&out)
	return out
}

func saveOf(s *frost.Save) FrostSave {
	return FrostSave{Lay: string(s.Lay), Under: string(s.Under), LiftC: s.LiftC, Odds: s.Odds}
}

func (n *frostNamer) frostPlant(p *frost.Plant) FrostPlant {
	out := FrostPlant{Planting: p.Planting.ID, Name: n.use(p.Planting.Crop, p.Planting.Use), Crop: p.Planting.Crop, Use: p.Use.Name, Stage: p.Stage.String(),
		AgeD: p.AgeD, Harden: p.Harden, Exposed: p.Exposed, KillC: p.KillC, FirstC: p.FirstC, Tender: p.Tender, From: n.r.Today + cal.Date(p.First), Odds: p.Odds, Lost: p.Lost}
	if v, ok := n.varieties[p.Planting.Variety]; ok {
		out.Name += " ‘" + v.Name + "’"
	}
	args := words.Args{"crop": out.Name, "kill": wholeC(p.KillC), "first": wholeC(p.FirstC), "stage": words.P("desk.frost_stage_"+out.Stage, nil)}
	var plain words.Phrase
	switch {
	case p.Stage == growth.Germinating:
		plain = words.P("desk.frost_plant_seed", args)
	case !p.Exposed:
		plain = words.P("desk.frost_plant_perennial", args)
	case p.Tender:
		plain = words.P("desk.frost_plant_tender", args)
	case p.Harden >= 0.5:
		plain = words.P("desk.frost_plant_hardened", args)
	default:
		plain = words.P("desk.frost_plant", args)
	}
	out.Says = []words.Phrase{plain}
	if p.First > 0 {
		out.Says = append(out.Says, words.P("desk.frost_plant_in", words.Args{"on": out.From}))
	}
	if worst := slices.Max(p.Odds); worst >= frost.Least {
		out.Says = append(out.Says, words.P("desk.frost_plant_risk", words.Args{"worst": worst}))
	}
	return out
}

// hurtTonight are the plantings of a bed that are at risk tonight, by name.
func (b *FrostBed) hurtTonight() []string {
	var out []string
	for i := range b.Plants {
		if b.Plants[i].Odds[0] >= frost.Least && !slices.Contains(out, b.Plants[i].Name) {
			out = append(out, b.Plants[i].Name)
		}
	}
	return out
}

// byDusk says what is to be done on a bed before tonight.
func (n *frostNamer) byDusk(b *FrostBed, told *frost.Bed) []words.Phrase {
	tonight := &b.Nights[0]
	if tonight.Odds < frost.Least {
		return nil
	}
	args := words.Args{"crops": b.hurtTonight(), "odds": tonight.Odds, "c": wholeC(tonight.C.Middle())}
	out := []words.Phrase{words.P("desk.frost_tonight", args)}
	switch {
	case b.Lay != nil:
		out = append(out, n.lay(b.Lay))
	case n.r.Gear && len(tonight.Saves) > 0:
		out = append(out, words.P("desk.frost_none_left", nil))
	case n.r.Gear:
		out = append(out, words.P("desk.frost_none_helps", nil))
	default:
		out = append(out, words.P("desk.frost_none_owned", nil))
	}
	if c, err := cover.Lookup(cover.Kind(tonight.Under)); err == nil && c.Opens() {
		out = append(out, words.P("desk.frost_shut", nil))
	}
	if told.Place.Kind == "container" || told.Place.Kind == "bench" {
		out = append(out, words.P("desk.frost_carry", nil))
	}
	return out
}

const openCover = "open"

// lay says which cover is laid and what it does.
func (n *frostNamer) lay(s *FrostSave) words.Phrase {
	args := words.Args{"lay": coverName(cover.Kind(s.Lay)), "lift": wholeTenth(s.LiftC), "odds": s.Odds}
	saves, helps := "desk.frost_lay_saves", "desk.frost_lay_helps"
	if s.Under != openCover {
		saves, helps, args["under"] = "desk.frost_lay_under_saves", "desk.frost_lay_under_helps", coverName(cover.Kind(s.Under))
	}
	if s.Odds >= frost.Least {
		return words.P(helps, args)
	}
	return words.P(saves, args)
}

// wholeTenth rounds to tenths.
func wholeTenth(x float64) float64 { return math.Round(10*x) / 10 }

// nightsAfter says in which nights after tonight something is at risk.
func nightsAfter(b *FrostBed) []words.Phrase {
	var nights []words.Phrase
	worst := 0
	for i := 1; i < len(b.Nights); i++ {
		if x := &b.Nights[i]; x.Odds >= frost.Least {
			nights = append(nights, words.P("desk.frost_night", words.Args{"evening": x.Evening, "odds": x.Odds}))
			if worst == 0 || x.Odds > b.Nights[worst].Odds {
				worst = i
			}
		}
	}
	if len(nights) == 0 {
		return nil
	}
	out := []words.Phrase{words.P("desk.frost_nights", words.Args{"nights": nights})}
	if x := &b.Nights[worst]; len(x.Saves) > 0 && b.Lay == nil {
		s := &x.Saves[0]
		out = append(out, words.P("desk.frost_would", words.Args{"lay": coverName(cover.Kind(s.Lay)), "lift": wholeTenth(s.LiftC), "odds": s.Odds}))
	}
	return out
}

// later says in which of the weeks after the nights told one by one something is at risk.
func (n *frostNamer) later(b *FrostBed) []words.Phrase {
	if len(b.Weeks) == 0 {
		return nil
	}
	worst := slices.MaxFunc(b.Weeks, func(x, y FrostBedWeek) int { return cmp.Compare(x.Odds, y.Odds) })
	var names []string
	for _, id := range worst.Plantings {
		if name := n.use(n.plantings[id].Crop, n.plantings[id].Use); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return []words.Phrase{words.P("desk.frost_weeks", words.Args{"bed": b.Name, "crops": names, "first": worst.First, "odds": worst.Odds, "last": b.Weeks[len(b.Weeks)-1].Last})}
}
