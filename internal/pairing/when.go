package pairing

import (
	"garner/internal/cal"
	"garner/internal/plan"
)

// How early after the lower crop goes in something may be done to the upper, and
// how long before the upper goes anyway it is still worth asking [d]. judgement
const (
	settled = 14
	worth   = 10
)

// Together is the time in which two plantings can both be on their ground.
func Together(upper, lower *plan.Planting, end cal.Date) (from, until cal.Date) {
	from, until = max(upper.Date, lower.Date), end
	for _, p := range []*plan.Planting{upper, lower} {
		if p.ClearBy.IsSet() {
			until = min(until, p.ClearBy)
		}
	}
	return from, until
}

// UsualStrip is the day on which lower leaves are taken off when nobody says
// when: early in autumn while light still makes growth, or, when that is past or
// does not fall into their time together, as soon as can be. ok is false when
// there is no such day.
func UsualStrip(from, until, today cal.Date, northern bool) (cal.Date, bool) {
	earliest := max(today, from+settled)
	autumn := cal.MonthDay{Month: 10, Day: 5}
	if !northern {
		autumn.Month = 4
	}
	for year := earliest.Year(); year <= earliest.Year()+1; year++ {
		if d := autumn.In(year); d >= earliest && d <= until-worth {
			return d, true
		}
	}
	return earliest, earliest <= until-worth
}

// UsualClear is the day by which the upper crop is cleared when nobody says when:
// a third into what is left of their time together.
func UsualClear(from, until, today cal.Date) (cal.Date, bool) {
	earliest := max(today+1, from+settled)
	d := earliest + (until-earliest)/3
	return d, earliest <= until-worth
}
