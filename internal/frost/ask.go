package frost

import (
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
	mostFutures = 50

	// Least are the odds from which something is told as at risk.
	Least = 0.1

	// seldom is the share of futures under which a last frost no longer counts.
	seldom = 0.05

	// tenderC is the minimum under which the tenderest crops are first hurt [C]: 0.8 C
	// kills half of them young, by the crop book's classes.
	tenderC = 1.8
)

// Question is what is asked.
type Question struct {
	Setting outlook.Setting
	Memory  *outlook.Memory
	Minimum *float64          // tonight's in the open, told [C]; nil: as forecast or drawn
	Stages  map[string]string // stages of blossom that are told, by id of the planting or feature
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

// Of works out what frost and heat do from tonight on.
func Of(q Question) (*Answer, error) {
	a := &asking{Question: q, beds: map[string]*bed{}}
	var err error
	if a.book, err = risk.Load(); err != nil {
		return nil, err
	}
	if err := a.lookUp(); err != nil {
		return nil, err
	}
	if err := outlook.Standing(q.Setting, q.Memory, a.futures, q.Setting.Today, q.Setting.Today+cal.Date(a.nights)+1, a.see); err != nil {
		return nil, err
	}
	return a.answer()
}

// asking gathers the answer.
type asking struct {
	Question
	book    *risk.Book
	skies   map[string]*sky
	futures int
	nights  int // that are looked at
	beds    map[string]*bed
}

// answer puts together what was gathered.
func (a *asking) answer() (*Answer, error) {
	out := &Answer{Today: a.Setting.Today, Futures: a.futures}
	for i := range a.Setting.Holding.Sites {
		s := a.skies[a.Setting.Holding.Sites[i].ID]
		out.Sites = append(out.Sites, s.site(&a.Setting.Holding.Sites[i], a.nights))
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
	out.Fruit, err = a.fruit()
	return out, err
}
