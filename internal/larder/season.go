package larder

import "garner/internal/cal"

// InSeason tells whether the vegetable is wanted on a day. Both ends count. A
// season whose end lies before its start crosses the new year; a missing start
// is 1 January, a missing end 31 December. 29 February goes with the 28th.
func (w *Want) InSeason(day cal.Date) bool {
	_, m, d := day.YMD()
	if m == 2 && d == 29 {
		d = 28
	}
	today, from, to := m*100+d, 101, 1231
	if w.From.Month != 0 {
		from = w.From.Month*100 + w.From.Day
	}
	if w.To.Month != 0 {
		to = w.To.Month*100 + w.To.Day
	}
	if from <= to {
		return from <= today && today <= to
	}
	return today >= from || today <= to
}

// addTo adds so many kg a week over the want's season, a seventh a day, to a
// course that starts on first [kg/d].
func (w *Want) addTo(course []float64, first cal.Date, kgPerWeek float64) {
	for d := range course {
		if w.InSeason(first + cal.Date(d)) {
			course[d] += kgPerWeek / 7
		}
	}
}
