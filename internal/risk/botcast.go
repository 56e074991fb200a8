package risk

// botcast multiplies whether spores are likely (0 or 1) by how far the wet hours of
// the day let them infect (0, 1 or 2) and sums the products. It fires when the sum
// first reaches its first level and when it reaches its second. Its value is the
// day's product.
//
// Source: Sutton, James & Rowell 1986 in the form of the University of Wisconsin.
func botcast(a *asked) (out []Reading) {
	sum, level, before := 0.0, a.n("action"), -1
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if a.newYear(i) {
			sum, level = 0, a.n("action")
		}
		if !d.Humid || a.before(d.Date) {
			continue
		}
		before = -1
		if a.w.next(i) {
			before = i - 1
		}
		hours, mean := a.wetOf(d)
		r := Reading{Date: d.Date}
		if a.sporesLikely(i, before, hours) {
			r.Value = float64(a.table.value(mean, hours))
		}
		sum += r.Value
		if r.Sum = sum; sum >= level {
			r.Fired, r.Threshold = true, level
			if level = a.n("second"); r.Threshold == level {
				level = sum + 1e9
			}
		}
		out = append(out, r)
	}
	return out
}

// sporesLikely tells whether there are spores on a day with so many wet hours:
// not after heat, nor without enough wet hours, nor after a dry day unless the
// leaves are wet for long.
func (a *asked) sporesLikely(day, before, wetHours int) bool {
	w := a.w
	for j := day; j >= 0 && float64(w.Days[day].Date-w.Days[j].Date) < a.n("hot_days"); j-- {
		if hoursOver(w.of(&w.Days[j]), a.n("hot_c")) >= int(a.n("hot_hours")) {
			return false
		}
	}
	switch hours := float64(wetHours); {
	case hours < a.n("least_wet_hours"):
		return false
	case hours > a.n("sure_wet_hours") || before < 0:
		return true
	}
	d, dry := &w.Days[before], 0
	for _, h := range w.of(d) {
		if h.HumidityPct < a.n("dry_rh_pct") {
			dry++
		}
	}
	return !(float64(dry) >= a.n("dry_hours") && d.RainMM < a.n("dry_rain_mm"))
}
