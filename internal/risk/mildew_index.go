package risk

// mildewIndex rises with days that have hours enough one after the other within a
// band of temperature, and falls with others and with great heat, 0-100. It begins
// with so many such days one after the other. It fires on every day at or above the
// action level. Its value is the longest run of hours in the band, its sum the index.
//
// Source: Gubler, Rademacher, Vasquez & Thomas 1999.
func mildewIndex(a *asked) (out []Reading) {
	index, run, begun := 0.0, 0.0, false
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if a.newYear(i) || !a.w.next(i) {
			index, run, begun = 0, 0, false
		}
		if !d.Warm || a.before(d.Date) {
			continue
		}
		hours, hot := a.inBand(d)
		r := Reading{Date: d.Date, Value: float64(hours)}
		index, run, begun = a.mildewStep(index, run, begun, r.Value >= a.n("hours"), hot)
		if r.Sum = index; index >= a.n("action") {
			r.Fired, r.Threshold = true, a.n("action")
		}
		out = append(out, r)
	}
	return out
}

// mildewStep takes one day into the index. No more than up is added in a day and no
// more than down taken off.
func (a *asked) mildewStep(index, run float64, begun, good, hot bool) (float64, float64, bool) {
	up, down := a.n("up"), a.n("down")
	if !begun {
		if !good {
			return 0, 0, false
		}
		run++
		return up * run, run, run >= a.n("start_days")
	}
	change := -down
	if good {
		change = up
		if hot {
			change -= down
		}
	}
	return min(max(index+change, 0), a.n("most")), run, true
}

// inBand returns the longest run of hours of a day within the band, and whether any
// hour was too hot.
func (a *asked) inBand(d *Day) (longest int, hot bool) {
	run := 0
	for j := d.from; j < d.to; j++ {
		h := &a.w.Hours[j]
		hot = hot || h.TempC >= a.n("hot_c")
		if run++; !(h.TempC >= a.n("low_c") && h.TempC <= a.n("high_c")) || j > d.from && !a.w.follows(j) {
			run = 0
		}
		longest = max(longest, run)
	}
	return longest, hot
}
