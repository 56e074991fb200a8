package risk

import "math"

// band is the severity values of mean temperatures up to an edge.
type band struct {
	toC   float64 // upper edge, +Inf for none
	in    bool    // the edge itself belongs to it
	value [25]int // by whole hours
}

// severityTable gives a value for the wet hours of a day and their mean
// temperature, bands in order.
type severityTable []band

// value looks up a day.
func (t severityTable) value(meanC float64, hours int) int {
	for i := range t {
		if b := &t[i]; meanC < b.toC || b.in && meanC == b.toC {
			return b.value[min(max(hours, 0), 24)]
		}
	}
	return 0
}

// wetOf counts the hours of a day that a rule takes for wet and their mean
// temperature [C]: those at (rh_pct) or above (rh_above_pct) a humidity where the
// rule prints one, else those with wet leaves.
func (a *asked) wetOf(d *Day) (hours int, meanC float64) {
	at, above := a.or("rh_pct", math.Inf(1)), a.or("rh_above_pct", math.Inf(1))
	leaves := math.IsInf(at, 1) && math.IsInf(above, 1)
	for j := d.from; j < d.to; j++ {
		h := &a.w.Hours[j]
		if wet := h.HumidityPct >= at || h.HumidityPct > above || leaves && a.wet[j]; wet && !math.IsNaN(h.TempC) {
			hours++
			meanC += h.TempC
		}
	}
	if hours > 0 {
		meanC /= float64(hours)
	}
	return hours, meanC
}

// severityOf is a day's severity value.
func (a *asked) severityOf(d *Day) int {
	hours, mean := a.wetOf(d)
	if hours == 0 {
		mean = d.MeanC
	}
	return a.Severity(mean, hours)
}

// Severity is the severity value of so many wet hours of a mean temperature [C], of
// rules that look one up.
//
// Source: data/severity.csv.
func (r *Rule) Severity(meanC float64, hours int) int {
	if r.or("whole_degrees", 0) > 0 {
		meanC = math.Round(meanC)
	}
	return r.table.value(meanC, hours)
}

// severitySum sums severity values and fires when the sum reaches the action
// level; then it begins anew toward the level for again, or is silent where that
// is 0. Its value is the day's own.
//
// Source: Wallin 1962; Madden et al. 1978; Pitblado 1992.
func severitySum(a *asked) (out []Reading) {
	sum, level := 0.0, a.n("action")
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if a.newYear(i) {
			sum, level = 0, a.n("action")
		}
		if !d.Humid || a.before(d.Date) {
			continue
		}
		r := Reading{Date: d.Date, Value: float64(a.severityOf(d))}
		sum += r.Value
		if r.Sum = sum; sum >= level {
			r.Fired, r.Threshold = true, level
			sum = 0
			if level = a.n("again"); level == 0 {
				level = math.Inf(1)
				sum = r.Sum
			}
		}
		out = append(out, r)
	}
	return out
}

// severityWindow fires on each day on which the severity values of the last days
// together reach the action level. Its value is the day's own, its sum theirs.
//
// Source: Shane & Teng 1984; Windels et al. 1998.
func severityWindow(a *asked) (out []Reading) {
	days, action := int(a.n("days")), a.n("action")
	values := make([]float64, len(a.w.Days))
	run := 0
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !a.w.next(i) {
			run = 0
		}
		if !d.Humid {
			run = 0
			continue
		}
		run++
		values[i] = float64(a.severityOf(d))
		r := Reading{Date: d.Date, Value: values[i]}
		for j := i; j > i-min(days, run); j-- {
			r.Sum += values[j]
		}
		if r.Sum >= action {
			r.Fired, r.Threshold = true, action
		}
		out = append(out, r)
	}
	return out
}
