package frost

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/risk"
)

const (
	// nightsTold is how many nights are told one by one.
	nightsTold = 10

	// farthest is how far ahead nights are looked at [d].
	farthest = 210

	// mostFutures is how many futures are looked at.
	mostFutures = 40

	// Least are the odds from which something is told as at risk.
	Least = 0.1

	// seldom is the share of futures under which a last frost no longer counts.
	seldom = 0.05

	// tenderC is the minimum under which the tenderest crops are first hurt [C]: 0.8 C
	// kills half of them young, by the crop book's classes.
	tenderC = 1.8
)

// Question is what is asked of what was seen.
type Question struct {
	Minimum *float64             // tonight's in the open, told [C]; nil: as forecast or drawn
	Stages  map[string]string    // stages of blossom that are told of today, by id of the planting or feature
	Seen    map[string]SeenStage // stages that were recorded, likewise; one that is told goes before it
}

// SeenStage is a stage of blossom that was seen on a day.
type SeenStage struct {
	Stage string // of risk.Blossom
	On    cal.Date
}

// Answer is what frost and heat do.
type Answer struct {
	Today   cal.Date
	Futures int
	Sites   []Site
	Beds    []Bed // with something on them, along the walking route
	Ahead   []SetOut
	Fruit   []Fruit
	Heat    []Heat
	Sowings []Sowing // of seed that sleeps in warm soil
}

// Seen is what stands where under the futures, and their weather: what takes time.
type Seen struct {
	setting outlook.Setting
	book    *risk.Book
	skies   map[string]*sky
	futures int
	nights  int // that are looked at
	beds    map[string]*bed
}

// See looks at what stands on the beds in the nights to come.
func See(s outlook.Setting, m *outlook.Memory) (*Seen, error) {
	a := &Seen{setting: s, beds: map[string]*bed{}}
	var err error
	if a.book, err = risk.Load(); err != nil {
		return nil, err
	}
	if err := a.lookUp(m); err != nil {
		return nil, err
	}
	return a, outlook.Standing(s, m, a.futures, s.Today, s.Today+cal.Date(a.nights)+1, a.see)
}

// Answer tells what frost and heat do from tonight on.
func (a *Seen) Answer(q Question) (*Answer, error) {
	if q.Minimum != nil {
		var err error
		if a, err = a.told(*q.Minimum); err != nil {
			return nil, err
		}
	}
	return a.answer(q)
}

// told is what was seen with another minimum tonight.
func (a *Seen) told(minimumC float64) (*Seen, error) {
	out := *a
	out.skies, out.beds = map[string]*sky{}, map[string]*bed{}
	for id, s := range a.skies {
		out.skies[id] = s.told(minimumC)
	}
	for id, b := range a.beds {
		own := *b
		own.sky = out.skies[b.place.Site]
		own.under = slices.Clone(b.under)
		night, err := own.minima(a.setting.Today, 0, a.futures)
		if err != nil {
			return nil, err
		}
		own.under[0] = night
		out.beds[id] = &own
	}
	return &out, nil
}

// answer puts together what was gathered.
func (a *Seen) answer(q Question) (*Answer, error) {
	out := &Answer{Today: a.setting.Today, Futures: a.futures}
	for i := range a.setting.Holding.Sites {
		s := a.skies[a.setting.Holding.Sites[i].ID]
		out.Sites = append(out.Sites, s.site(&a.setting.Holding.Sites[i], a.nights))
	}
	for _, b := range a.inOrder() {
		told, err := b.told(a)
		if err != nil {
			return nil, err
		}
		if len(told.Plants) > 0 {
			out.Beds = append(out.Beds, told)
		}
		out.Ahead = append(out.Ahead, b.ahead(a)...)
		heat, sowings, err := b.heat(a)
		if err != nil {
			return nil, err
		}
		out.Heat, out.Sowings = append(out.Heat, heat...), append(out.Sowings, sowings...)
	}
	if err := a.protect(out.Beds); err != nil {
		return nil, err
	}
	var err error
	out.Fruit, err = a.fruit(q)
	return out, err
}
