package programme

// Lack is what keeps one unit more of a sowing out: ground or a resource in a week, or
// a limit. Those that it is not are -1.
type Lack struct{ Ground, Resource, Limit, Week int }

// Lacks is the first thing that lacks for one unit more of a sowing; false when there
// is room, or when all that may be taken of it is taken.
func (s *Standing) Lacks(j int) (Lack, bool) {
	w := &s.Problem.Sowings[j]
	out := Lack{-1, -1, -1, -1}
	for week := w.First; week <= w.Last; week++ {
		if s.held[w.Ground][week] >= s.Problem.Grounds[w.Ground].Units {
			out.Ground, out.Week = w.Ground, week
			return out, true
		}
	}
	for _, u := range w.Uses {
		if u.Amount > s.Problem.Resources[u.Resource].PerWeek[u.Week]-s.used[u.Resource][u.Week]+Slack {
			out.Resource, out.Week = u.Resource, u.Week
			return out, true
		}
	}
	for _, t := range s.of.terms[j] {
		if t.weight > s.Problem.Limits[t.limit].Most-s.limits[t.limit]+Slack {
			out.Limit = t.limit
			return out, true
		}
	}
	return out, false
}

// Relieves tells whether a unit less of a sowing leaves more of what lacks.
func (s *Standing) Relieves(j int, l Lack) bool {
	w := &s.Problem.Sowings[j]
	switch {
	case l.Ground >= 0:
		return w.Ground == l.Ground && w.First <= l.Week && l.Week <= w.Last
	case l.Resource >= 0:
		for _, u := range w.Uses {
			if u.Resource == l.Resource && u.Week == l.Week && u.Amount > 0 {
				return true
			}
		}
	case l.Limit >= 0:
		for _, t := range s.of.terms[j] {
			if t.limit == l.Limit {
				return true
			}
		}
	}
	return false
}
