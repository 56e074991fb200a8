package desk

import (
	"math"

	"garner/internal/programme"
	"garner/internal/search"
)

// write hands the problem out as standard files.
func (o *DraftOptions) write(name string, l *programme.Linear) error {
	if o.MPS != nil {
		if err := programme.WriteMPS(o.MPS, name, l); err != nil {
			return err
		}
	}
	if o.LP != nil {
		return programme.WriteLP(o.LP, name, l)
	}
	return nil
}

// judge reads a solver's solution and computes its objective anew, with a bound.
func (v *DraftView) judge(p *programme.Problem, l *programme.Linear, o DraftOptions) (search.Found, error) {
	units, told, err := programme.ReadSolution(o.Solution, p, l)
	if err != nil {
		return search.Found{}, err
	}
	s, err := p.Of(units)
	if err != nil {
		return search.Found{}, err
	}
	v.Solver, v.Broken = told, s.Broken()
	return search.Found{Units: units, Objective: s.Objective(), Bound: boundOf(p, s.Objective(), o)}, nil
}

// How many steps the bound of a judged solution takes at most, and how many between
// looks at the clock.
const (
	boundSteps = 2400
	boundLooks = 50
)

// boundOf looks for a bound for as long as a search would take, aiming at what the
// judged solution costs.
func boundOf(p *programme.Problem, objective float64, o DraftOptions) float64 {
	stop := sought(o).Stop
	b, best := search.NewBound(p), math.Inf(-1)
	b.Aim(objective)
	for done := 0; done < boundSteps && (stop == nil || !stop()); done += boundLooks {
		best = b.Step(boundLooks)
	}
	return best
}
