package larder

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// GapLeft is a span in which the household goes without a vegetable and is
// content: nothing of it is wanted then, so that nothing can lack.
type GapLeft struct {
	ID        string
	Vegetable string
	Group     string   // in place of a vegetable
	From, To  cal.Date // both inclusive
}

// layLeft takes the want out of the spans that are left.
func (p *Pantry) layLeft(faults fault.List) fault.List {
	for i := range p.in.Left {
		l := &p.in.Left[i]
		v, known := p.rowOf(l.Vegetable, l.Group)
		switch {
		case !known:
			faults = append(faults, fault.New(fault.NotFound, "larder.left_vegetable", words.Args{"vegetable": l.Vegetable}))
		case !l.From.IsSet() || !l.To.IsSet() || l.To < l.From:
			faults = append(faults, fault.New(fault.Invalid, "larder.left_span", words.Args{"vegetable": l.Vegetable, "from": l.From, "to": l.To}))
		default:
			from := max(0, int(l.From-p.in.First))
			to := min(p.in.Days, int(l.To-p.in.First)+1)
			for d := from; d < to; d++ {
				p.wants[v][d] = 0
			}
		}
	}
	return faults
}
