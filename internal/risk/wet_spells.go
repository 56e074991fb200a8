package risk

import "math"

// wetRun is a spell of wet leaves.
type wetRun struct {
	hours int     // wet hours
	sumC  float64 // of their temperatures
	dry   int     // dry hours since the last wet one
}

func (r *wetRun) meanC() float64 { return r.sumC / float64(r.hours) }

// spells steps through the wet hours of the record and tells each hour of a spell;
// spells with a dry gap of no more than so many hours are one.
func (a *asked) spells(gap int, tell func(day int, r *wetRun)) {
	var r wetRun
	day := 0
	for j := range a.w.Hours {
		for a.w.Days[day].to <= j {
			day++
		}
		if !a.w.follows(j) {
			r = wetRun{}
		}
		if !a.wet[j] || math.IsNaN(a.w.Hours[j].TempC) {
			if r.dry++; r.dry > gap {
				r = wetRun{}
			}
			continue
		}
		r.dry = 0
		r.hours++
		r.sumC += a.w.Hours[j].TempC
		tell(day, &r)
	}
}

// wetSpell fires on each day on which leaves have been wet for so many hours at a
// mean temperature within a band. Its value is the longest spell so far that day [h].
//
// Source: Humpherson-Jones & Maude 1982; Hong & Fitt 1995; Bayer pest notes.
func wetSpell(a *asked) []Reading {
	value, fired := make([]float64, len(a.w.Days)), make([]bool, len(a.w.Days))
	a.spells(int(a.n("gap_hours")), func(day int, r *wetRun) {
		value[day] = max(value[day], float64(r.hours))
		if mean := r.meanC(); float64(r.hours) >= a.n("action_hours") && mean >= a.n("low_c") && mean <= a.n("high_c") {
			fired[day] = true
		}
	})
	return a.ofDays(value, fired, a.n("action_hours"))
}

// wetLogistic fires on each day on which the share of flowers that a spell of wet
// leaves infects reaches the action level. Its value is the greatest share that day.
//
// Source: Bulger, Ellis & Madden 1987.
func wetLogistic(a *asked) []Reading {
	value, fired := make([]float64, len(a.w.Days)), make([]bool, len(a.w.Days))
	a.spells(0, func(day int, r *wetRun) {
		p := a.infectedShare(float64(r.hours), r.meanC())
		value[day] = max(value[day], p)
		fired[day] = fired[day] || p >= a.n("action")
	})
	return a.ofDays(value, fired, a.n("action"))
}

// infectedShare is the share infected after so many wet hours at a mean temperature
// [C], 0-1.
func (a *asked) infectedShare(hours, meanC float64) float64 {
	l := a.n("constant") + a.n("per_h")*hours + a.n("per_h_c")*hours*meanC + a.n("per_h_c3")*hours*meanC*meanC*meanC
	return 1 / (1 + math.Exp(-l))
}

// ofDays makes readings of the days that count or fired.
func (a *asked) ofDays(value []float64, fired []bool, threshold float64) (out []Reading) {
	for i := range a.w.Days {
		if d := &a.w.Days[i]; d.Humid || fired[i] {
			r := Reading{Date: d.Date, Value: value[i], Fired: fired[i]}
			if r.Fired {
				r.Threshold = threshold
			}
			out = append(out, r)
		}
	}
	return out
}

// morningWet fires on a day whose leaves stay wet for so many hours from an hour of
// the morning on, unless it is too warm in the hours after. Its value is the wet
// hours from then on [h].
//
// Source: Scherm & van Bruggen 1994; the limits of temperature from Wu et al. 2002.
func morningWet(a *asked) (out []Reading) {
	from := int(a.n("from_hour"))
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !d.Humid {
			continue
		}
		r := Reading{Date: d.Date}
		for j := d.from; j < d.to; j++ {
			if at := a.w.Hours[j].Hour; at < from {
				continue
			} else if !a.wet[j] || at != from+int(r.Value) {
				break
			}
			r.Value++
		}
		if r.Value >= a.n("action_hours") && !a.warmMorning(d, from) {
			r.Fired, r.Threshold = true, a.n("action_hours")
		}
		out = append(out, r)
	}
	return out
}

// warmMorning tells whether the first hours or those after them are too warm, where
// the rule has limits.
func (a *asked) warmMorning(d *Day, from int) bool {
	early := from + int(a.or("early_hours", 0))
	return a.meanBetween(d, from, early) > a.or("early_c", math.Inf(1)) ||
		a.meanBetween(d, early, early+int(a.or("later_hours", 0))) > a.or("later_c", math.Inf(1))
}

// meanBetween is the mean temperature of a day from one hour until another [C], NaN
// without any.
func (a *asked) meanBetween(d *Day, from, until int) float64 {
	n, sum := 0, 0.0
	for _, h := range a.w.of(d) {
		if h.Hour >= from && h.Hour < until && !math.IsNaN(h.TempC) {
			n++
			sum += h.TempC
		}
	}
	return sum / float64(n)
}
