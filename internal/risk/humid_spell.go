package risk

// humidSpell fires on the day on which so many hours one after the other have been
// warm and humid enough: the Beaumont period. Its value is the length of the spell
// so far at its longest on the day [h]. A spell fires once.
//
// Source: Beaumont 1947.
func humidSpell(a *asked) (out []Reading) {
	action, run := a.n("action_hours"), 0
	for i := range a.w.Days {
		d := &a.w.Days[i]
		r := Reading{Date: d.Date}
		for j := d.from; j < d.to; j++ {
			h := &a.w.Hours[j]
			if !a.w.follows(j) {
				run = 0
			}
			if run++; !(h.TempC >= a.n("temp_c") && h.HumidityPct >= a.n("rh_pct")) {
				run = 0
			}
			r.Value = max(r.Value, float64(run))
			if float64(run) == action {
				r.Fired, r.Threshold = true, action
			}
		}
		if d.Humid || r.Fired {
			out = append(out, r)
		}
	}
	return out
}
