package exchange

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/larder"
	"garner/internal/words"
)

// checkGapsLeft finds spans that end before they begin.
func (c *checker) checkGapsLeft() {
	for i, l := range c.h.GapsLeft {
		c.span("gaps_left", i, l.From, l.To)
	}
}

// checkPurchases finds spans that end before they begin.
func (c *checker) checkPurchases() {
	for i, p := range c.h.Purchases {
		c.span("purchases", i, p.From, p.To)
	}
}

// span reports a last day before the first.
func (c *checker) span(table string, row int, from, to cal.Date) {
	if from.IsSet() && to.IsSet() && to < from {
		c.wrong(table, row, "to", fault.New(fault.Invalid, "exchange.to_before_from", words.Args{"from": from, "to": to}))
	}
}

// checkVisits finds spans that end before they begin and absences that leave
// fewer than nobody at the table.
func (c *checker) checkVisits() {
	for i, v := range c.h.Visits {
		c.span("visits", i, v.From, v.To)
	}
	for i, v := range c.h.Visits {
		if !(v.Eaters < 0) || !(c.h.Eaters > 0) || c.faulty("visits", i, "from", "to", "eaters") {
			continue
		}
		for _, day := range changesWithin(c.h.Visits, &v) {
			if at := larder.AtTable(c.h.Eaters, c.h.Visits, day); at < 0 {
				c.wrong("visits", i, "eaters", fault.New(fault.Conflict, "exchange.fewer_than_none", words.Args{"day": day, "eaters": at, "usual": c.h.Eaters}))
				break
			}
		}
	}
}

// changesWithin are the days of a visit on which the number at the table may be
// another than the day before.
func changesWithin(visits []larder.Visit, v *larder.Visit) []cal.Date {
	out := []cal.Date{v.From}
	for i := range visits {
		for _, day := range []cal.Date{visits[i].From, visits[i].To + 1} {
			if visits[i].To.IsSet() && v.Covers(day) {
				out = append(out, day)
			}
		}
	}
	return out
}
