package risk

// pValue is the worth of a temperature for the growth of potatoes, 0-10: none at
// low and high, ten at the best.
//
// Source: Sands, Hackett & Nix 1979.
func (a *asked) pValue(c float64) float64 {
	low, best, high := a.n("low_c"), a.n("best_c"), a.n("high_c")
	switch width := best - low; {
	case c < low || c > high:
		return 0
	case c > best:
		width = high - best
		fallthrough
	default:
		return 10 * (1 - (c-best)*(c-best)/(width*width))
	}
}

// pDay is the physiological day of a minimum and a maximum [C], 0-10. The last of
// its four terms is of the minimum, or of the maximum, in which the sources differ.
func (a *asked) pDay(tMinC, tMaxC float64) float64 {
	last := tMinC
	if a.n("last_maximum") > 0 {
		last = tMaxC
	}
	return (5*a.pValue(tMinC) + 8*a.pValue((2*tMinC+tMaxC)/3) + 8*a.pValue((tMinC+2*tMaxC)/3) + 3*a.pValue(last)) / 24
}

// physiologicalDays sums them and fires once a year, when they reach the action
// level. Its value is the day's own.
func physiologicalDays(a *asked) (out []Reading) {
	sum, action, done := 0.0, a.n("action"), false
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if a.newYear(i) {
			sum, done = 0, false
		}
		if !d.Warm || a.before(d.Date) {
			continue
		}
		r := Reading{Date: d.Date, Value: a.pDay(d.TMinC, d.TMaxC)}
		sum += r.Value
		if r.Sum = sum; sum >= action && !done {
			r.Fired, r.Threshold, done = true, action, true
		}
		out = append(out, r)
	}
	return out
}
