package risk

// rainFavourable tells for each day of the record whether the days behind it were
// cool and wet enough: mean of so many days not above a temperature, rain of so
// many days at least so much, and the day's own night not too cold.
//
// Source: Hyre 1954; Krause, Massie & Hyre 1975.
func (a *asked) rainFavourable() []bool {
	out := make([]bool, len(a.w.Days))
	run := 0 // days one after the other that count
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if !a.w.next(i) {
			run = 0
		}
		if run++; !d.Warm {
			run = 0
		}
		meanDays, rainDays := int(a.n("mean_days")), int(a.n("rain_days"))
		if run < max(meanDays, rainDays) {
			continue
		}
		mean, rain := 0.0, 0.0
		for j := i; j > i-meanDays; j-- {
			mean += a.w.Days[j].MeanC / float64(meanDays)
		}
		for j := i; j > i-rainDays; j-- {
			rain += a.w.Days[j].RainMM
		}
		out[i] = a.favourable(mean, rain, d.TMinC)
	}
	return out
}

// favourable is the rule for one day.
func (a *asked) favourable(meanC, rainMM, tMinC float64) bool {
	return meanC <= a.n("mean_c") && rainMM >= a.n("rain_mm") && tMinC >= a.n("tmin_c")
}

// rainDays fires on the day that makes so many favourable days one after the other.
// Its value is how many there are so far.
func rainDays(a *asked) (out []Reading) {
	action, run := int(a.n("action_days")), 0
	for i, good := range a.rainFavourable() {
		d := &a.w.Days[i]
		if run++; !good {
			run = 0
		}
		if !d.Warm {
			continue
		}
		r := Reading{Date: d.Date, Value: float64(run)}
		if run == action {
			r.Fired, r.Threshold = true, a.n("action_days")
		}
		out = append(out, r)
	}
	return out
}
