package jobs

import (
	"garner/internal/cal"
	"garner/internal/place"
)

// Ground is dressed as the crops come off in autumn and winter: the days of the year in
// the north between which it is, and the share of a bed that must be free. Common
// practice, no source.
const (
	dressFrom = 273 // 30 September
	dressTo   = 100 // 10 April
	dressFree = 0.5
)

// dressAhead is how long before its last day a bed is dressed where there is one [d].
// Judgement.
const dressAhead = 14

// dressAgain is for how long dressing is asked for as ground comes free, and how long
// before its last day it is asked for again [d]; all winter would be nagging. Judgement.
const dressAgain = 21

// dressBest is the best day of a dressing, seen from today.
func dressBest(from, last, today cal.Date) cal.Date {
	best := min(last, from+dressAhead/2)
	if today > from+dressAgain {
		return max(best, last-dressAgain)
	}
	return best
}

// dressing is from when until when a bed is dressed: the first time in the season in
// which half of it is free, else the end of the season, when it goes on between the
// plants. Where a last day is given it is the days before that one.
func (d *deriver) dressing(bed *place.Bed, until cal.Date) (from, last cal.Date) {
	if until.IsSet() {
		return until - dressAhead, until
	}
	south := d.south(bed.Site)
	for year := d.Today.Year() - 1; ; year++ {
		first, end := seasonIn(year, dressFrom, dressTo, south)
		if end < d.Today {
			continue
		}
		if from, last, ok := d.freeWithin(bed, first, end); ok {
			return from, last
		}
		return max(first, end-2*dressAhead), end
	}
}

// freeWithin is the first time within some days, not over yet, in which half of a bed is
// free.
func (d *deriver) freeWithin(bed *place.Bed, first, end cal.Date) (from, last cal.Date, ok bool) {
	from = cal.None
	for on := first; on <= end; on++ {
		free := d.heldShare(bed, on) <= 1-dressFree
		if free && !from.IsSet() {
			from = on
		}
		if from.IsSet() && (!free || on == end) {
			last = on
			if !free {
				last--
			}
			if last >= d.Today {
				return from, last, true
			}
			from = cal.None
		}
	}
	return cal.None, cal.None, false
}

// heldShare is the share of a bed on which something stands on a day.
func (d *deriver) heldShare(bed *place.Bed, on cal.Date) float64 {
	held := 0.0
	for _, l := range d.byBed[bed.ID] {
		if l.planted.mid <= on && on <= l.end() {
			held += l.p.AreaM2
		}
	}
	if area := bed.AreaM2(); area > 0 {
		return held / area
	}
	return 1
}
