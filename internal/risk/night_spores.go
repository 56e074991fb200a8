package risk

import "math"

// heatHours are the temperatures [C] whose hours of the day before stop spores, by
// the names of the numbers that say how many do.
var heatHours = []struct {
	name string
	c    float64
}{{"hours_over_27", 27}, {"hours_over_28", 28}, {"hours_over_29", 29}, {"hours_over_30", 30}}

// nightSpores fires on the morning after a night in which spores of downy mildew
// form. Its value is 1 then.
//
// Source: Hildebrand & Sutton 1982; the clauses on heat from Gilles et al. 2004.
func nightSpores(a *asked) (out []Reading) {
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !d.Humid {
			continue
		}
		r := Reading{Date: d.Date}
		if a.sporesOvernight(i, int(a.n("rain_from_hour")), int(a.n("to_hour"))) && !a.stoppedByHeat(i) {
			r.Value, r.Fired, r.Threshold = 1, true, 1
		}
		out = append(out, r)
	}
	return out
}

// stoppedByHeat tells whether the heat of the day before keeps spores from forming.
// Without that day it does not.
func (a *asked) stoppedByHeat(day int) bool {
	if !a.w.next(day) {
		return false
	}
	d := &a.w.Days[day-1]
	if d.TMaxC > a.or("day_max_c", math.Inf(1)) || d.MeanC > a.or("day_mean_c", math.Inf(1)) {
		return true
	}
	for _, h := range heatHours {
		if float64(hoursOver(a.w.of(d), h.c)) > a.or(h.name, math.Inf(1)) {
			return true
		}
	}
	return false
}
