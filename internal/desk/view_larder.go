package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/words"
)

// LarderView is what lies in store, how long it lasts, and what goes over.
type LarderView struct {
	Household string
	Today     cal.Date
	From      cal.Date // Monday
	Weeks     int
	Years     int
	Seed      uint64
	Lead      []words.Phrase
	Stocks    []StockView // the first to run out first
	EatFirst  []BatchLine // what goes over soon, or before it is eaten; the first first
	Stores    []StoreView
	Surplus   []SurplusView
	Give      []GiveWeek // what is left for neighbours or the food bank, by week
	Cautions  []CautionView
}

// StockView is a vegetable in store.
type StockView struct {
	Vegetable, Plural string
	Kg                float64 // when the table begins, mean over the futures
	Out               Odds    // when it runs out; None: not within the table
	Outlasts          float64 // share of futures in which it outlasts the table
	Judged            float64 // share of futures in which it runs out and some is wanted afterwards
	Meets             float64 // of those, the share in which food is there when it has run out
	WaitD             int     // else, days until it is, in the middle of those years; -1: not within the table
	Next              string  // planting that gives the most in the week after; empty: none
	NextName          string
	Batches           []BatchLine // first to be eaten first
	Says              []words.Phrase
}

// BatchLine is a batch in store.
type BatchLine struct {
	ID               string
	Name             string // what it is
	Vegetable        string
	Store, StoreName string
	Crop, Use        string
	Kg               float64 // when the table begins; what becomes of it is of that
	Stored           cal.Date
	Planting         string // id; empty: not told
	PlantingName     string
	Good             cal.Date // last day it is good
	Out              Odds     // eaten up or gone over
	Spoils           float64  // share of futures in which some of it is not eaten in time
	EatenKg, LostKg  float64
	SownKg           float64 // as planting stock
	LeftKg           float64
	Says             words.Phrase
}

// LarderView returns the larder as it stands.
func (o *Office) LarderView() (*LarderView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	key := a.answer("larder").Sum()
	if v, known := o.views.larders.get(key); known {
		return v, nil
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	v, err := larderView(a, t)
	if err != nil {
		return nil, err
	}
	o.views.larders.keep(key, v)
	return v, nil
}

// Larder returns the larder of a holding.
func Larder(h *holding.Holding, o OutlookOptions) (*LarderView, error) {
	s, err := settingOf(h, o)
	if err != nil {
		return nil, err
	}
	t, err := outlook.Compute(s, memory())
	if err != nil {
		return nil, err
	}
	return larderView(&asked{holding: h, setting: s}, t)
}

func larderView(a *asked, t *outlook.Table) (*LarderView, error) {
	v := &LarderView{Household: a.holding.Name, Today: a.setting.Today, From: t.From, Weeks: t.Weeks, Years: t.Years, Seed: t.Seed}
	n := newNamer(a)
	for _, s := range t.Stocks() {
		v.Stocks = append(v.Stocks, n.stock(t, &s))
	}
	slices.SortStableFunc(v.Stocks, func(x, y StockView) int { return soonest(x.Out.P50, y.Out.P50) })
	v.EatFirst = eatFirst(v.Stocks, v.Today)
	levels := t.Levels()
	v.Stores = n.stores(t, levels, v.Stocks)
	v.Surplus = n.surpluses(t, levels)
	v.Give = giveAway(v)
	v.Lead = larderLead(v)
	var err error
	v.Cautions, err = larderCautions(a.setting.Book, v)
	return v, err
}

// soonest orders days, None last.
func soonest(a, b cal.Date) int {
	switch {
	case a.IsSet() != b.IsSet():
		if a.IsSet() {
			return -1
		}
		return 1
	case !a.IsSet():
		return 0
	}
	return cmp.Compare(a, b)
}

// oddsOfDays are the early, middle and late day of ten by nearest rank, None
// counting as later than any.
func oddsOfDays(days []cal.Date) Odds {
	if len(days) == 0 {
		return Odds{cal.None, cal.None, cal.None}
	}
	sorted := slices.Clone(days)
	slices.SortFunc(sorted, soonest)
	at := func(share float64) cal.Date { return sorted[min(len(sorted)-1, int(share*float64(len(sorted))))] }
	return Odds{at(0.1), at(0.5), at(0.9)}
}

// larderLead says what to eat first and what runs out unmet.
func larderLead(v *LarderView) []words.Phrase {
	if len(v.Stocks) == 0 {
		return []words.Phrase{words.P("desk.larder_empty", nil)}
	}
	var out []words.Phrase
	if len(v.EatFirst) > 0 {
		var names []string
		for _, b := range v.EatFirst {
			if !slices.Contains(names, b.Name) && len(names) < mostFirst {
				names = append(names, b.Name)
			}
		}
		out = append(out, words.P("desk.larder_first", words.Args{"names": names}))
	}
	for i := range v.Stocks {
		if s := &v.Stocks[i]; s.Kg >= leastThere && s.Out.P50.IsSet() && s.Judged > 0.5 && s.Meets < 0.5 {
			return append(out, words.P("desk.larder_lead_gap", words.Args{"name": s.Plural, "out": s.Out.P50}))
		}
	}
	return append(out, words.P("desk.larder_lead_met", nil))
}

// mostFirst is how many batches the lead names.
const mostFirst = 3
