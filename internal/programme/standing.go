package programme

// Standing is a problem with some sowings taken: what ground, hours and room they
// use, and what they cost. It is one worker's; Clone makes another's.
type Standing struct {
	Problem *Problem
	Units   Solution

	held   [][]int     // by ground and week: units in use
	used   [][]float64 // by resource and week
	limits []float64   // by limit: its sum
	of     *index
	taken  [][]int32 // by demand: sowings with units
	costs  []float64 // by demand
	work   float64   // costs of the sowings
	feeder Feeder

	shifts []Change // since the last Keep or Undo
	stale  []stale  // demands they touch
	before float64  // work at that time
}

// index is what all standings of a problem share.
type index struct {
	wanted  [][]float64 // by demand and level: over all weeks [kg]
	terms   [][]term    // by sowing: its limits
	inverse float64     // 1 / futures
}

type term struct {
	limit  int
	weight float64
}

// NewStanding takes no sowing yet.
func (p *Problem) NewStanding() *Standing {
	s := &Standing{Problem: p, Units: make(Solution, len(p.Sowings)), of: p.index(),
		held: make([][]int, len(p.Grounds)), used: make([][]float64, len(p.Resources)),
		limits: make([]float64, len(p.Limits)), taken: make([][]int32, len(p.Demands)), costs: make([]float64, len(p.Demands))}
	for g := range s.held {
		s.held[g] = make([]int, p.Weeks)
	}
	for r := range s.used {
		s.used[r] = make([]float64, p.Weeks)
	}
	for d := range s.costs {
		s.costs[d] = s.demandCost(d, nil)
	}
	return s
}

func (p *Problem) index() *index {
	x := &index{wanted: make([][]float64, len(p.Demands)), terms: make([][]term, len(p.Sowings)), inverse: 1 / float64(len(p.Futures))}
	for d := range p.Demands {
		for i := range p.Demands[d].Levels {
			sum := 0.0
			for _, kg := range p.Demands[d].Levels[i].PerWeek {
				sum += kg
			}
			x.wanted[d] = append(x.wanted[d], sum)
		}
	}
	for l := range p.Limits {
		for _, t := range p.Limits[l].Terms {
			x.terms[t.Sowing] = append(x.terms[t.Sowing], term{l, t.Weight})
		}
	}
	return x
}

// Clone is an equal standing that shares nothing that changes.
func (s *Standing) Clone() *Standing {
	c := *s
	c.Units = append(Solution(nil), s.Units...)
	c.limits = append([]float64(nil), s.limits...)
	c.costs = append([]float64(nil), s.costs...)
	c.held, c.used, c.taken = cloned(s.held), cloned(s.used), cloned(s.taken)
	c.feeder, c.shifts, c.stale = Feeder{}, nil, nil
	return &c
}

func cloned[T any](rows [][]T) [][]T {
	out := make([][]T, len(rows))
	for i := range rows {
		out[i] = append([]T(nil), rows[i]...)
	}
	return out
}

// Objective is what the standing costs.
func (s *Standing) Objective() float64 {
	sum := s.work
	for _, cost := range s.costs {
		sum += cost
	}
	return sum
}

// DemandCost is what a demand costs now.
func (s *Standing) DemandCost(d int) float64 { return s.costs[d] }

// Change is units of a sowing more or fewer.
type Change struct{ Sowing, Units int }

// Price is by how much the objective would rise with changes, all of them to
// sowings of one demand. Room is not asked for.
func (s *Standing) Price(changes ...Change) float64 {
	d := s.Problem.Sowings[changes[0].Sowing].Demand
	sum := s.demandCost(d, changes) - s.costs[d]
	for _, c := range changes {
		sum += float64(c.Units) * s.Problem.Sowings[c.Sowing].Cost
	}
	return sum
}

// demandCost is a demand's cost with changes made.
func (s *Standing) demandCost(d int, changes []Change) float64 {
	p := s.Problem
	demand := &p.Demands[d]
	sum := 0.0
	for k := range p.Futures {
		s.feeder.begin(p.Weeks)
		if k < len(demand.Fixed) {
			s.feeder.add(demand.Fixed[k], 1)
		}
		for _, j := range s.taken[d] {
			units := s.Units[j]
			for _, c := range changes {
				if c.Sowing == int(j) {
					units += c.Units
				}
			}
			if units > 0 {
				s.feeder.add(p.Sowings[j].Lots[k], float64(units))
			}
		}
		for i, c := range changes {
			if s.Units[c.Sowing] == 0 && c.Units > 0 && firstOf(changes, i) {
				s.feeder.add(p.Sowings[c.Sowing].Lots[k], float64(total(changes, c.Sowing)))
			}
		}
		sum += s.feeder.cost(demand, s.of.wanted[d])
	}
	return sum * s.of.inverse
}

// firstOf tells whether no change before i is to the same sowing.
func firstOf(changes []Change, i int) bool {
	for _, c := range changes[:i] {
		if c.Sowing == changes[i].Sowing {
			return false
		}
	}
	return true
}

// total adds up the changes to one sowing.
func total(changes []Change, sowing int) int {
	sum := 0
	for _, c := range changes {
		if c.Sowing == sowing {
			sum += c.Units
		}
	}
	return max(0, sum)
}

// Room is how many units more of a sowing there is ground and everything else for.
func (s *Standing) Room(j int) int {
	w := &s.Problem.Sowings[j]
	room := w.Most - s.Units[j]
	units := s.Problem.Grounds[w.Ground].Units
	for _, held := range s.held[w.Ground][w.First : w.Last+1] {
		room = min(room, units-held)
	}
	for _, u := range w.Uses {
		if u.Amount > 0 {
			free := s.Problem.Resources[u.Resource].PerWeek[u.Week] - s.used[u.Resource][u.Week]
			room = min(room, whole(free/u.Amount))
		}
	}
	for _, t := range s.of.terms[j] {
		room = min(room, whole((s.Problem.Limits[t.limit].Most-s.limits[t.limit])/t.weight))
	}
	return max(0, room)
}

// whole rounds down, with room for the rounding of sums.
func whole(x float64) int { return int(min(x+Slack, 1<<30)) }

// Slack is how far a row may be overrun by rounding of sums.
const Slack = 1e-9

// Add takes units of a sowing more, or fewer when negative.
func (s *Standing) Add(j, units int) {
	s.Shift(j, units)
	s.Settle()
	s.Keep()
}

// list keeps the demand's taken sowings in their order, so that the same units
// cost the same bits whatever way led to them.
func (s *Standing) list(j int32, before, after int) {
	taken := &s.taken[s.Problem.Sowings[j].Demand]
	switch {
	case before == 0 && after > 0:
		at := len(*taken)
		*taken = append(*taken, j)
		for ; at > 0 && (*taken)[at-1] > j; at-- {
			(*taken)[at] = (*taken)[at-1]
		}
		(*taken)[at] = j
	case before > 0 && after == 0:
		out := (*taken)[:0]
		for _, other := range *taken {
			if other != j {
				out = append(out, other)
			}
		}
		*taken = out
	}
}

// Taken are the sowings of a demand that have units, in order; read only.
func (s *Standing) Taken(d int) []int32 { return s.taken[d] }

// Held is how many units of a ground are in use in a week.
func (s *Standing) Held(ground, week int) int { return s.held[ground][week] }

// Used is how much of a resource is used in a week.
func (s *Standing) Used(resource, week int) float64 { return s.used[resource][week] }
