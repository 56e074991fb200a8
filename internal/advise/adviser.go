package advise

import (
	"sync"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/rotation"
	"garner/internal/space"
	"garner/internal/words"
)

// Adviser answers for one holding and its table. It may be asked from many
// places at once.
type Adviser struct {
	Today  cal.Date
	Table  *outlook.Table
	Ground *space.Ground

	// Clash tells why a planting should not come to its bed, nil when it may;
	// Remarks are what else should be said of it. Either may be nil.
	Clash   func(p *plan.Planting) *words.Phrase
	Remarks func(p *plan.Planting) []words.Phrase

	holding *holding.Holding
	book    *crop.Book
	scales  *outlook.Scales
	lacking map[string]bool // vegetables that somebody wants
	names   plan.IDs
	stores  map[string]store

	mu     sync.Mutex
	tested map[testKey]testing
}

// New makes an adviser for a setting; the table is computed, or taken from the
// memory.
func New(s outlook.Setting, m *outlook.Memory) (*Adviser, error) {
	scales, err := outlook.NewScales(s, m)
	if err != nil {
		return nil, err
	}
	g, err := space.Of(scales.Table, s.Holding, s.Book, s.Today)
	if err != nil {
		return nil, err
	}
	a := &Adviser{Today: s.Today, Table: scales.Table, Ground: g, holding: s.Holding, book: s.Book, scales: scales,
		lacking: map[string]bool{}, names: plan.Taken(s.Holding.Plantings, s.Holding.Changes), tested: map[testKey]testing{}}
	for i := range s.Holding.Wants {
		if s.Holding.Wants[i].Wanted() {
			if s.Holding.Wants[i].Vegetable != "" {
				a.lacking[s.Holding.Wants[i].Vegetable] = true
			}
			for _, m := range s.Holding.Members {
				if m.Group == s.Holding.Wants[i].Group {
					a.lacking[m.Vegetable] = true
				}
			}
		}
	}
	a.stores = a.usualStores()
	return a, a.useRotation()
}

// useRotation makes the rotation tell of clashes, and the covers of what they let
// in.
func (a *Adviser) useRotation() error {
	history, err := rotation.NewHistory(rotation.Ground{Book: a.book, Sites: a.holding.Sites, Beds: a.holding.Beds,
		Plantings: a.scales.Plantings(), Records: a.holding.Records, Over: a.over})
	if err != nil {
		return err
	}
	a.Clash = func(p *plan.Planting) *words.Phrase {
		c := history.Check(p.Bed, rotation.Candidate{Crop: p.Crop, Use: p.Use, Date: p.Date, Planting: p.ID})
		if c == nil || c.Gentle {
			return nil
		}
		return &c.Phrase
	}
	a.Remarks = a.guarded
	return nil
}

// over is when a planting is forecast to be gone; None when it is not known.
func (a *Adviser) over(planting string) cal.Date {
	for i := range a.Ground.Beds {
		if h := a.Ground.Beds[i].Hold(planting); h != nil {
			return h.Clear.P50
		}
	}
	return cal.None
}
