package larder

import (
	"maps"
	"slices"
)

// Future is what differs from one future to the next.
type Future struct {
	Supplies []*Supply // their order decides whose turn at a store is first; keep it the same
	// SupplyLife and BatchLife multiply the lives of stored lots, by Supplies and
	// by Setting.Batches (> 0): what is uncertain about keeping. Missing: 1.
	SupplyLife []float64
	BatchLife  []float64
}

// Scratch is one worker's working memory for a pantry.
type Scratch struct {
	pantry   *Pantry
	keepings []keeping
	index    map[keepingKey]int32
	levels   []float64 // by keeping: in store now [kg]
	load     []float64 // by store: in it now [kg]
	sources  []source
	lots     []lot
	queues   []queue   // by vegetable
	over     []float64 // by vegetable: today's [kg]
	row      int       // the group that eats; ownWant: a vegetable's own want
	closing  []int32   // lots of the ground that end today
	flowedKg float64

	hoursLeft float64 // of the week, in the kitchen

	owed      []float64 // by the pantry's claims: still to be held back, as of their day [kg]
	held      []heldLot
	nextClaim int // the first claim whose day is still to come
}

// NewScratch returns working memory for one worker.
func (p *Pantry) NewScratch() *Scratch {
	return &Scratch{
		pantry:   p,
		keepings: slices.Clone(p.keepings),
		index:    maps.Clone(p.index),
		levels:   make([]float64, len(p.keepings)),
		load:     make([]float64, len(p.in.Stores)),
		queues:   make([]queue, len(p.in.Vegetables)),
		over:     make([]float64, len(p.in.Vegetables)),
		owed:     make([]float64, len(p.claims)),
		row:      ownWant,
	}
}

// Run sets supply against want under one future and writes what came of it to
// out, which Pantry.NewYear made. The same future gives the same bits. It
// allocates nothing once s and out have seen a future of this size.
func (p *Pantry) Run(s *Scratch, f Future, out *Year) error {
	if err := s.begin(&f, out); err != nil {
		return err
	}
	for day := range p.until {
		s.freshWeek(day)
		s.decay(out)
		s.opens(day, out)
		s.openBatches(day, &f, out)
		s.sow(day, out)
		s.ripen(day)
		for v := range s.queues {
			s.eat(v, day, out)
			if len(p.in.Groups) == 0 {
				s.end(v, day, out)
			}
		}
		s.eatGroups(day, out)
		for _, l := range s.closing {
			s.gather(int(l), day, out)
		}
		s.write(day, out)
	}
	if p.until < p.in.Days {
		return nil // what is left then is still to be eaten
	}
	s.settle(out)
	s.balance(out)
	return out.Balance.check()
}

// First is the pantry of the same table that runs its first days only: what they tell is
// the whole table's, bit for bit. Sums over a run, and what is left after it, are told
// by whole tables alone.
func (p *Pantry) First(days int) *Pantry {
	own := *p
	own.until = min(days, p.in.Days)
	return &own
}

// eatGroups lets the groups eat what their members' own wants leave, and then ends
// what is good today for the last time.
func (s *Scratch) eatGroups(day int, out *Year) {
	if len(s.pantry.in.Groups) == 0 {
		return
	}
	for g := range s.pantry.in.Groups {
		s.eatGroup(g, day, out)
	}
	for v := range s.queues {
		s.end(v, day, out)
	}
}

// begin clears the working memory and readies the supplies.
func (s *Scratch) begin(f *Future, out *Year) error {
	if err := s.laySources(f); err != nil {
		return err
	}
	s.row = ownWant
	out.reset(f.Supplies)
	clear(s.levels)
	s.lots = s.lots[:0]
	s.flowedKg = 0
	s.owe(out)
	for v := range s.queues {
		s.queues[v].reset()
	}
	return nil
}

// ripen brings to the queues what the ground newly gives today.
func (s *Scratch) ripen(day int) {
	for i := range s.sources {
		src := &s.sources[i]
		if day < src.start || day >= src.end {
			continue
		}
		if len(src.flow) > 0 {
			if kg := float64(src.flow[day-src.first]); kg > 0 {
				s.flowedKg += kg
				s.enqueue(src.vegetable, src.goodUntil(day), lot{kind: hanging, kg: kg, owner: int32(i)})
			}
		} else if !src.begun {
			src.begun = true
			s.enqueue(src.vegetable, src.last, lot{kind: standing, owner: int32(i)})
		}
	}
}

// enqueue adds a lot to what there is of a vegetable.
func (s *Scratch) enqueue(vegetable int32, last int, l lot) {
	s.queues[vegetable].add(newKey(last, l.kind >= stored, len(s.lots)))
	s.lots = append(s.lots, l)
}

// write puts the day's over and the level of each store into the results.
func (s *Scratch) write(day int, out *Year) {
	for v, kg := range s.over {
		if kg > 0 {
			out.Courses[v].Over[day] = float32(kg)
			s.over[v] = 0
		}
	}
	s.closing = s.closing[:0]
	for i, kg := range s.load {
		out.Stores[i].LevelKg[day] = float32(max(kg, 0))
	}
}
