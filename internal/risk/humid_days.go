package risk

import "garner/internal/climate"

// humidHours counts the hours of a day at or above a humidity [%].
func humidHours(hours []climate.Hour, pct float64) (n int) {
	for i := range hours {
		if hours[i].HumidityPct >= pct {
			n++
		}
	}
	return n
}

// humidDays fires on the last of so many days one after the other, each with a
// night warm enough and humid hours enough: the Hutton criteria and the Smith
// period. Its value is the least of the days' humid hours.
//
// Source: AHDB 11120018; Smith 1956. A day is that of the record; Smith's own
// ended at 09:00.
func humidDays(a *asked) (out []Reading) {
	days, action, warm := int(a.n("days")), a.n("action_hours"), a.n("tmin_c")
	hours := make([]float64, len(a.w.Days))
	run := 0
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !d.Humid {
			run = 0
			continue
		}
		hours[i] = float64(humidHours(a.w.of(d), a.n("rh_pct")))
		if !a.w.next(i) {
			run = 0
		}
		if run++; d.TMinC < warm || hours[i] < action {
			run = 0
		}
		r := Reading{Date: d.Date, Value: hours[i]}
		if run >= days {
			r.Fired, r.Threshold = true, action
			for j := i - days + 1; j < i; j++ {
				r.Value = min(r.Value, hours[j])
			}
		}
		out = append(out, r)
	}
	return out
}
