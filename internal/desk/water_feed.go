package desk

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/watering"
)

// FeedView tells which beds get liquid feed with their water, and how much.
type FeedView struct {
	Today   cal.Date  `json:"today"`
	Wanted  bool      `json:"wanted"`     // the household has told its feed
	MLPerL  float64   `json:"feed_ml_l"`  // as the label says
	CanL    float64   `json:"can_l"`      // a can
	Turns   []FeedRow `json:"beds"`       // the first due first along the route
	DueNowL float64   `json:"due_now_l"`  // of made-up feed, due today
	DueML   float64   `json:"due_now_ml"` // of feed in it
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
	Litres   float64   `json:"l"` // of made-up feed
	Cans     float64   `json:"cans"`
	MLPerCan float64   `json:"ml_per_can"` // of feed to a full can
	ML       float64   `json:"ml"`         // of feed in all
	Last     *cal.Date `json:"last"`
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
	v := &FeedView{Today: a.setting.Today, MLPerL: a.holding.FeedMLL, Wanted: a.holding.FeedMLL > 0, CanL: canOf(a.holding), Turns: []FeedRow{}, Holding: a.holding.ID, Version: a.version}
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
		ml := v.MLPerL * f.Strength
		v.Turns = append(v.Turns, FeedRow{Bed: f.Bed, BedName: n.bed(f.Bed), Planting: f.Planting, What: n.use(f.Crop, f.Use), Why: f.Why, EveryD: f.EveryD,
			Litres: wholeL(f.LitresL), Cans: CansOf(f.LitresL, v.CanL), MLPerCan: tenthOf(ml * v.CanL), ML: tenthOf(ml * f.LitresL),
			Last: dateOrNone(f.Last), Due: f.Due, Half: f.Strength < 1, Pot: f.Pot})
		if f.Due <= v.Today {
			v.DueNowL += f.LitresL
			v.DueML += ml * f.LitresL
		}
	}
	sortFeeds(v.Turns, at)
	v.DueNowL, v.DueML = wholeL(v.DueNowL), tenthOf(v.DueML)
	return v, nil
}
