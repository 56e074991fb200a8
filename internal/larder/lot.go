package larder

// lotKind says where a lot is.
type lotKind int8

const (
	standing lotKind = iota // a whole planting in the ground
	hanging                 // ripe on the plant since one day
	stored                  // in a store, from a planting
	opened                  // in a store when the table begins
)

// lot is food of one origin that goes over on one day.
type lot struct {
	kind    lotKind
	owner   int32   // index of the supply, or of the opening batch
	keeping int32   // of stored lots
	since   int32   // day on which a stored lot weighed kg
	kg      float64 // not used by standing lots
}

// available returns what can be eaten of a lot on a day [kg].
func (s *Scratch) available(l *lot, day int) float64 {
	switch l.kind {
	case standing:
		src := &s.sources[l.owner]
		return src.left * src.whole(day)
	case hanging:
		return l.kg
	}
	return l.kg * s.keepings[l.keeping].remain[day-int(l.since)]
}

// takeFresh eats kg of the have kg of a lot from the ground.
func (s *Scratch) takeFresh(l *lot, kg, have float64, day int, out *Year) {
	planting := &out.Plantings[l.owner]
	planting.FreshKg += kg
	planting.FreshWeek[day/7] += float32(kg)
	if s.row != ownWant {
		planting.GroupFresh[s.row][day/7] += float32(kg)
	}
	if !planting.From.IsSet() {
		planting.From = s.date(day)
	}
	planting.To = s.date(day)
	if l.kind == hanging {
		l.kg -= kg
		return
	}
	src := &s.sources[l.owner]
	src.standingKg += kg
	src.taken += kg / src.whole(day)
	if kg == have {
		src.left = 0
		return
	}
	src.left *= 1 - kg/have
}

// takeStored eats kg of the have kg of a stored lot.
func (s *Scratch) takeStored(l *lot, kg, have float64, day int, out *Year) {
	s.weigh(l, have, day, out)
	l.kg -= kg
	s.remove(l, kg)
	out.Stores[s.keepings[l.keeping].store].EatenKg += kg
	if l.kind == stored {
		out.Plantings[l.owner].EatenKg += kg
		out.Plantings[l.owner].StoredWeek[day/7] += float32(kg)
		if s.row != ownWant {
			out.Plantings[l.owner].GroupStored[s.row][day/7] += float32(kg)
		}
		return
	}
	batch := &out.Batches[l.owner]
	batch.EatenKg += kg
	batch.StoredWeek[day/7] += float32(kg)
	if s.row != ownWant {
		batch.GroupStored[s.row][day/7] += float32(kg)
	}
	if l.kg == 0 {
		batch.Out = s.date(day)
	}
}

// weigh brings a stored lot's weight up to a day and books what it lost.
func (s *Scratch) weigh(l *lot, have float64, day int, out *Year) {
	s.bookLoss(l, l.kg-have, out)
	s.remain(l, have, day)
}

// remain takes a stored lot's weight on a day as what it is from now on.
func (s *Scratch) remain(l *lot, kg float64, day int) { l.kg, l.since = kg, int32(day) }

// bookLoss notes a loss in store with the lot's planting or batch.
func (s *Scratch) bookLoss(l *lot, kg float64, out *Year) {
	if l.kind == stored {
		out.Plantings[l.owner].LostKg += kg
		return
	}
	out.Batches[l.owner].LostKg += kg
}

// remove takes kg out of a lot's store.
func (s *Scratch) remove(l *lot, kg float64) {
	s.levels[l.keeping] -= kg
	s.load[s.keepings[l.keeping].store] -= kg
}
