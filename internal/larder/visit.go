package larder

import (
	"math"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// Visit is a span in which more or fewer than usual sit at the table.
type Visit struct {
	ID       string
	From, To cal.Date // both inclusive
	Eaters   float64  // more than usual; below 0: away
	Note     string
}

// Covers tells whether the visit falls on a day.
func (v *Visit) Covers(day cal.Date) bool { return v.From <= day && day <= v.To }

// AtTable is the number of eaters on a day, usual ones and visits taken together.
// It may be below 0 where visits contradict each other.
func AtTable(usual float64, visits []Visit, day cal.Date) float64 {
	for i := range visits {
		if visits[i].Covers(day) {
			usual += visits[i].Eaters
		}
	}
	return usual
}

// layVisits makes the want of each day that of those who sit at the table.
func (p *Pantry) layVisits(faults fault.List) fault.List {
	if len(p.in.Visits) == 0 {
		return faults
	}
	if !(p.in.Eaters > 0) || math.IsInf(p.in.Eaters, 0) {
		return append(faults, fault.New(fault.Invalid, "larder.eaters", words.Args{"eaters": p.in.Eaters}))
	}
	for d := range p.in.Days {
		day := p.in.First + cal.Date(d)
		eaters := AtTable(p.in.Eaters, p.in.Visits, day)
		switch {
		case eaters == p.in.Eaters:
			continue
		case !(eaters >= 0) || math.IsInf(eaters, 0):
			return append(faults, fault.New(fault.Invalid, "larder.eaters_on", words.Args{"eaters": eaters, "day": day}))
		}
		for v := range p.wants {
			p.wants[v][d] *= eaters / p.in.Eaters
			if p.buys[v] != nil {
				p.buys[v][d] *= eaters / p.in.Eaters
			}
		}
	}
	return faults
}
