package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/watering"
)

// FeedView tells which plantings are fed, with their water or dry, and how much.
type FeedView struct {
	Today   cal.Date  `json:"today"`
	Wanted  bool      `json:"wanted"`     // the household has told its feed
	Liquid  bool      `json:"-"`          // it has told a liquid one
	Dry     bool      `json:"-"`          // it has told a dry one
	MLPerL  float64   `json:"feed_ml_l"`  // as the label says
	GPerM2  float64   `json:"feed_g_m2"`  // as the label says
	CanL    float64   `json:"can_l"`      // a can
	Turns   []FeedRow `json:"beds"`       // the first due first along the route
	DueNowL float64   `json:"due_now_l"`  // of made-up feed, due today
	DueML   float64   `json:"due_now_ml"` // of feed in it
	DueG    float64   `json:"due_now_g"`  // of dry feed, if that is given instead
	Holding string    `json:"-"`          // id, for the form
	Version int64     `json:"-"`
}

// FeedRow is one planting's turn.
type FeedRow struct {
	Bed      string    `json:"bed"`
	BedName  string    `json:"bed_name"`
	Planting string    `json:"planting"`
	What     string    `json:"what"`
	Why      string    `json:"why"`
	EveryD   int       `json:"every_d"`
	DryEvery int       `json:"dry_every_d"` // from one dry feed to the next
	M2       float64   `json:"m2"`
	Litres   float64   `json:"l"` // of made-up feed
	Cans     float64   `json:"cans"`
	MLPerCan float64   `json:"ml_per_can"` // of feed to a full can
	ML       float64   `json:"ml"`         // of feed in all
	DryG     float64   `json:"dry_g"`      // of dry feed in all
	Last     *cal.Date `json:"last"`
	LastDry  bool      `json:"last_dry"` // the last feed was dry
	Due      cal.Date  `json:"due"`
	Half     bool      `json:"weaker"` // than the label says
	Pot      bool      `json:"container"`
}

// Feeding works out the feed of a holding.
func Feeding(h *holding.Holding, seed uint64) (*FeedView, error) {
	h, _ = withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: seed})
	if err != nil {
		return nil, err
	}
	return feedView(&asked{holding: h, setting: s}, outlook.NewMemory())
}

// FeedView works out the feed of the holding as it stands.
func (o *Office) FeedView() (*FeedView, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	name := a.answer("feed").Sum()
	if known, ok := o.views.feeds.get(name); ok {
		return known, nil
	}
	v, err := feedView(a, o.views.sky)
	if err == nil {
		o.views.feeds.keep(name, v)
	}
	return v, err
}

func feedView(a *asked, m *outlook.Memory) (*FeedView, error) {
	h := a.holding
	v := &FeedView{Today: a.setting.Today, MLPerL: h.FeedMLL, GPerM2: h.FeedGM2, Liquid: h.FeedMLL > 0, Dry: h.FeedGM2 > 0,
		CanL: canOf(h), Turns: []FeedRow{}, Holding: h.ID, Version: a.version}
	v.Wanted = v.Liquid || v.Dry
	feeds, err := watering.Feeds(a.setting, m)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	at := map[string]int{}
	for i, b := range alongTheRoute(a.holding) {
		at[b.ID] = i
	}
	for i := range feeds {
		f := &feeds[i]
		ml, g := v.MLPerL*f.Strength, v.GPerM2*f.Strength*f.AreaM2
		v.Turns = append(v.Turns, FeedRow{Bed: f.Bed, BedName: n.bed(f.Bed), Planting: f.Planting, What: n.use(f.Crop, f.Use), Why: f.Why, EveryD: f.EveryD, DryEvery: f.DryEveryD, M2: tenthOf(f.AreaM2),
			Litres: wholeL(f.LitresL), Cans: CansOf(f.LitresL, v.CanL), MLPerCan: tenthOf(ml * v.CanL), ML: tenthOf(ml * f.LitresL),
			DryG: wholeG(g), Last: dateOrNone(f.Last), LastDry: f.LastDry, Due: f.Due, Half: f.Strength < 1, Pot: f.Pot})
		if f.Due <= v.Today {
			v.DueNowL += f.LitresL
			v.DueML += ml * f.LitresL
			v.DueG += wholeG(g)
		}
	}
	sortFeeds(v.Turns, at)
	v.DueNowL, v.DueML = wholeL(v.DueNowL), tenthOf(v.DueML)
	return v, nil
}

// wholeG rounds dry feed to what a kitchen scale tells [g]: to five, small amounts to one.
func wholeG(g float64) float64 {
	if g < wholeFromG {
		return math.Round(g)
	}
	return fiveG * math.Round(g/fiveG)
}

const (
	wholeFromG = 20.0
	fiveG      = 5.0
)
