package programme

import (
	"math"

	"garner/internal/fault"
	"garner/internal/words"
)

// Of is the standing of a solution, which need not keep within what there is; see
// Broken.
func (p *Problem) Of(units Solution) (*Standing, error) {
	if len(units) != len(p.Sowings) {
		return nil, fault.New(fault.Invalid, "programme.length", words.Args{"given": len(units), "sowings": len(p.Sowings)})
	}
	s := p.NewStanding()
	for j, n := range units {
		if n < 0 {
			return nil, fault.New(fault.OutOfRange, "programme.negative", words.Args{"sowing": p.Sowings[j].ID, "units": n})
		}
		if n > 0 {
			s.Add(j, n)
		}
	}
	return s, nil
}

// Objective is what a solution costs.
func (p *Problem) Objective(units Solution) (float64, error) {
	s, err := p.Of(units)
	if err != nil {
		return math.NaN(), err
	}
	return s.Objective(), nil
}

// Broken are the rows that a standing overruns, one phrase each.
func (s *Standing) Broken() []words.Phrase {
	p := s.Problem
	var out []words.Phrase
	for j, n := range s.Units {
		if n > p.Sowings[j].Most {
			out = append(out, words.P("programme.over_most", words.Args{"sowing": p.Sowings[j].ID, "units": n, "most": p.Sowings[j].Most}))
		}
	}
	for g := range p.Grounds {
		for week, n := range s.held[g] {
			if n > p.Grounds[g].Units {
				out = append(out, words.P("programme.over_ground", words.Args{"ground": p.Grounds[g].ID, "week": week, "units": n, "there": p.Grounds[g].Units}))
			}
		}
	}
	for r := range p.Resources {
		for week, amount := range s.used[r] {
			if there := p.Resources[r].PerWeek[week]; amount > there+Slack*math.Max(1, there) {
				out = append(out, words.P("programme.over_resource", words.Args{"resource": p.Resources[r].ID, "week": week, "used": amount, "there": there}))
			}
		}
	}
	for l := range p.Limits {
		if most := p.Limits[l].Most; s.limits[l] > most+Slack*math.Max(1, math.Abs(most)) {
			out = append(out, words.P("programme.over_limit", words.Args{"limit": p.Limits[l].ID, "sum": s.limits[l], "most": most}))
		}
	}
	return out
}
