package larder

// meal is what was eaten of one want on a day [kg].
type meal struct{ fresh, stored float64 }

// eat meets the day's want of a vegetable from what goes over first, then buys what
// may be bought, and notes what was fresh, stored, bought and short.
func (s *Scratch) eat(v, day int, out *Year) {
	need := s.pantry.wants[v][day]
	if need == 0 {
		return
	}
	eaten := meal{}
	need = s.take(v, day, latestDay, need, &eaten, out)
	s.note(v, day, need, &eaten, out)
}

// take eats up to need kg of a vegetable's lots that are good until a day at most,
// the soonest over first, and returns what is still needed.
func (s *Scratch) take(v, day, until int, need float64, eaten *meal, out *Year) float64 {
	q := &s.queues[v]
	kept, i := q.head, q.head // keys of lots looked at and not emptied gather before kept
	for ; i < len(q.keys) && need > 0 && q.keys[i].last() <= until; i++ {
		l := &s.lots[q.keys[i].lot()]
		have := s.available(l, day)
		kg := min(have, need)
		need -= kg
		if l.kind >= stored {
			s.takeStored(l, kg, have, day, out)
			eaten.stored += kg
		} else if kg > 0 {
			s.takeFresh(l, kg, have, day, out)
			eaten.fresh += kg
		}
		if kg < have || have == 0 {
			q.keys[kept] = q.keys[i]
			kept++
		}
	}
	n := kept - q.head
	copy(q.keys[i-n:i], q.keys[q.head:kept])
	q.head = i - n
	return need
}

// note buys what may be bought of what is still needed, and writes a row's day.
func (s *Scratch) note(row, day int, need float64, eaten *meal, out *Year) {
	c := &out.Courses[row]
	if buys := s.pantry.buys[row]; buys != nil {
		bought := min(need, buys[day])
		need -= bought
		c.Bought[day] = float32(bought)
	}
	c.Fresh[day], c.Stored[day], c.Short[day] = float32(eaten.fresh), float32(eaten.stored), float32(need)
}

// end takes from the queue what is good today for the last time: what lies in a
// store is spoiled, what is in the ground is to be gathered.
func (s *Scratch) end(v, day int, out *Year) {
	q := &s.queues[v]
	for q.head < len(q.keys) && q.keys[q.head].last() <= day {
		at := q.keys[q.head].lot()
		q.head++
		l := &s.lots[at]
		if l.kind < stored {
			s.closing = append(s.closing, int32(at))
			continue
		}
		s.spoil(l, s.available(l, day), day, out)
	}
}

// spoil loses all kg that are left of a stored lot.
func (s *Scratch) spoil(l *lot, kg float64, day int, out *Year) {
	s.weigh(l, kg, day, out)
	s.bookLoss(l, kg, out)
	s.remove(l, kg)
	l.kg = 0
	out.Stores[s.keepings[l.keeping].store].SpoiledKg += kg
	if l.kind == opened {
		out.Batches[l.owner].Out = s.date(day)
	}
}
