package programme

// stale is a demand whose cost has to be computed anew, and what it was.
type stale struct {
	demand int
	cost   float64
}

// Shift takes units of a sowing more, or fewer when negative, for a trial: Settle
// tells what all shifts since the last Keep or Undo do, and one of these ends the
// trial. Costs are not up to date before Settle.
func (s *Standing) Shift(j, units int) {
	if len(s.shifts) == 0 {
		s.before = s.work
	}
	s.shifts = append(s.shifts, Change{j, units})
	s.move(j, units)
	d := s.Problem.Sowings[j].Demand
	for i := range s.stale {
		if s.stale[i].demand == d {
			return
		}
	}
	s.stale = append(s.stale, stale{d, s.costs[d]})
}

// Settle computes the touched demands and returns by how much the objective rises.
func (s *Standing) Settle() float64 {
	sum := s.work - s.before
	for _, t := range s.stale {
		s.costs[t.demand] = s.demandCost(t.demand, nil)
		sum += s.costs[t.demand] - t.cost
	}
	return sum
}

// Keep ends a trial that was settled and leaves things as they are.
func (s *Standing) Keep() { s.shifts, s.stale = s.shifts[:0], s.stale[:0] }

// Undo ends a trial, settled or not, and leaves things as they were.
func (s *Standing) Undo() {
	for i := len(s.shifts) - 1; i >= 0; i-- {
		s.move(s.shifts[i].Sowing, -s.shifts[i].Units)
	}
	for _, t := range s.stale {
		s.costs[t.demand] = t.cost
	}
	if len(s.shifts) > 0 {
		s.work = s.before
	}
	s.Keep()
}

// move books units with the ground, the resources and the limits.
func (s *Standing) move(j, units int) {
	w := &s.Problem.Sowings[j]
	before := s.Units[j]
	s.Units[j] += units
	held := s.held[w.Ground]
	for week := w.First; week <= w.Last; week++ {
		held[week] += units
	}
	for _, u := range w.Uses {
		s.used[u.Resource][u.Week] += float64(units) * u.Amount
	}
	for _, t := range s.of.terms[j] {
		s.limits[t.limit] += float64(units) * t.weight
	}
	s.work += float64(units) * w.Cost
	s.list(int32(j), before, s.Units[j])
}
