package larder

import "math"

// decay takes the day's small losses out of every store.
func (s *Scratch) decay(out *Year) {
	clear(s.load)
	for i, level := range s.levels {
		if level == 0 {
			continue
		}
		k := &s.keepings[i]
		after := level * k.remain[1]
		s.levels[i] = after
		s.load[k.store] += after
		out.Stores[k.store].DecayedKg += level - after
	}
}

// openBatches brings in the opening batches that are first there today. One
// whose life is already spent is spoiled at once, unless it was seen to be good.
func (s *Scratch) openBatches(day int, f *Future, out *Year) {
	for i := range s.pantry.openings {
		o := &s.pantry.openings[i]
		if o.day != day || o.kg == 0 {
			continue
		}
		k := &s.keepings[o.keeping]
		out.Stores[k.store].OpeningKg += o.kg
		out.Batches[i].ThereKg = o.kg
		s.levels[o.keeping] += o.kg
		s.load[k.store] += o.kg
		l := lot{kind: opened, owner: int32(i), keeping: o.keeping, since: int32(day), kg: o.kg}
		if s.holdBack(&l); l.kg == 0 {
			continue
		}
		lives := lifeAt(f.BatchLife, i) - o.worn
		switch {
		case o.seen:
			last := k.lastDay(day, leftWhenSeen)
			if lives > wearSlack {
				last = max(last, k.lastDay(o.from, lives))
			}
			s.enqueue(o.vegetable, last, l)
		case lives <= wearSlack:
			s.spoil(&l, l.kg, day, out)
		default:
			s.enqueue(o.vegetable, k.lastDay(o.from, lives), l)
		}
	}
}

// opens begins the account of the batches that are there on the day from which
// they are told.
func (s *Scratch) opens(day int, out *Year) {
	if day != s.pantry.opens {
		return
	}
	for i := range out.Batches {
		b := &out.Batches[i]
		b.ThereKg, b.EatenKg, b.LostKg, b.SownKg = 0, 0, 0, 0
	}
	for v := range s.queues {
		q := &s.queues[v]
		for _, k := range q.keys[q.head:] {
			s.there(&s.lots[k.lot()], day, out)
		}
	}
	for i := range s.held {
		s.there(&s.held[i].lot, day, out)
	}
}

// there weighs what is left of a batch.
func (s *Scratch) there(l *lot, day int, out *Year) {
	if l.kind != opened {
		return
	}
	kg := s.available(l, day)
	s.remain(l, kg, day)
	out.Batches[l.owner].ThereKg += kg
}

// gather deals with a lot of the ground that was good today for the last time:
// to its store while there is time and room, and the rest is over.
func (s *Scratch) gather(at, day int, out *Year) {
	l := &s.lots[at]
	kg := s.available(l, day)
	src := &s.sources[l.owner]
	toStore := (l.kind == hanging || src.lift) && src.keeping != none
	if l.kind == standing {
		src.standingKg += kg
		src.taken += src.left
		src.left = 0
	}
	if kg == 0 {
		return
	}
	if src.booked || toStore && day < src.storeFrom {
		out.Plantings[l.owner].GroundKg += kg
		return
	}
	rest := kg
	if toStore {
		timely := s.withinHours(s.keepings[src.keeping].store, kg)
		put := s.put(l.owner, timely, day, out)
		rest = kg - put
		out.Plantings[l.owner].NoTimeKg += kg - timely
		out.Plantings[l.owner].FullKg += timely - put
	}
	out.Plantings[l.owner].OverKg += rest
	s.over[src.vegetable] += rest
}

// put prepares a lot and lays it into its store while there is room. It returns
// what was brought, before preparing [kg].
func (s *Scratch) put(owner int32, kg float64, day int, out *Year) float64 {
	src, planting := &s.sources[owner], &out.Plantings[owner]
	k := &s.keepings[src.keeping]
	store := &out.Stores[k.store]
	room := math.Max(0, s.pantry.holds[k.store]-s.load[k.store])
	net := kg * (1 - k.lossShare)
	if net > room {
		kg *= room / net
		net = room
	}
	if net == 0 {
		return 0
	}
	s.work(k.store, kg, out)
	store.PutKg += kg
	store.PreparedKg += kg - net
	planting.PutKg += kg
	planting.LostKg += kg - net
	s.levels[src.keeping] += net
	s.load[k.store] += net
	l := lot{kind: stored, owner: owner, keeping: src.keeping, since: int32(day), kg: net}
	if s.holdBack(&l); l.kg > 0 {
		s.enqueue(src.vegetable, k.lastDay(day+1, src.life), l)
	}
	return kg
}

// settle weighs what is left in the ground and in the stores when the table
// ends.
func (s *Scratch) settle(out *Year) {
	day := s.pantry.in.Days - 1
	for v := range s.queues {
		q := &s.queues[v]
		for _, k := range q.keys[q.head:] {
			s.leave(&s.lots[k.lot()], day, out)
		}
	}
	for i := range s.held {
		if h := &s.held[i]; h.kg > 0 {
			s.leave(&h.lot, day, out)
		}
	}
}

func (s *Scratch) leave(l *lot, day int, out *Year) {
	kg := s.available(l, day)
	switch l.kind {
	case standing:
		s.sources[l.owner].standingKg += kg
		out.Plantings[l.owner].GroundKg += kg
		return
	case hanging:
		out.Plantings[l.owner].GroundKg += kg
		return
	case stored:
		out.Plantings[l.owner].StoreKg += kg
	case opened:
		out.Batches[l.owner].LeftKg += kg
	}
	s.bookLoss(l, l.kg-kg, out)
	out.Stores[s.keepings[l.keeping].store].LeftKg += kg
}
