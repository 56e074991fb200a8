package larder

import (
	"math"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// Purchase is a span in which some of what lacks of a vegetable may be bought, beside
// what its wants let be bought in their seasons.
type Purchase struct {
	ID        string
	Vegetable string
	Group     string   // in place of a vegetable
	From, To  cal.Date // both inclusive
	KgPerWeek float64  // at most [kg/week]
}

// Covers tells whether it may be bought on a day.
func (b *Purchase) Covers(day cal.Date) bool { return b.From <= day && day <= b.To }

// layPurchases lets be bought what the spans allow, a seventh of a week's a day.
func (p *Pantry) layPurchases(faults fault.List) fault.List {
	for i := range p.in.Purchases {
		b := &p.in.Purchases[i]
		v, known := p.rowOf(b.Vegetable, b.Group)
		switch {
		case !known:
			faults = append(faults, fault.New(fault.NotFound, "larder.purchase_vegetable", words.Args{"vegetable": b.Vegetable + b.Group}))
		case !b.From.IsSet() || !b.To.IsSet() || b.To < b.From:
			faults = append(faults, fault.New(fault.Invalid, "larder.purchase_span", words.Args{"vegetable": b.Vegetable + b.Group, "from": b.From, "to": b.To}))
		case !(b.KgPerWeek > 0) || math.IsInf(b.KgPerWeek, 0):
			faults = append(faults, fault.New(fault.Invalid, "larder.want_buy", words.Args{"vegetable": b.Vegetable + b.Group, "kg": b.KgPerWeek}))
		default:
			p.buyIn(int(v), b)
		}
	}
	return faults
}

func (p *Pantry) buyIn(v int, b *Purchase) {
	if p.buys[v] == nil {
		p.buys[v] = make([]float64, p.in.Days)
	}
	from := max(0, int(b.From-p.in.First))
	to := min(p.in.Days, int(b.To-p.in.First)+1)
	for d := from; d < to; d++ {
		p.buys[v][d] += b.KgPerWeek / 7
	}
}
