package risk

import "garner/internal/climate"

// spell counts the effective blight hours of one humid spell.
type spell struct {
	length    int     // humid hours from its beginning, breaks apart
	broken    int     // dry hours since the last humid one
	effective int     // hours that count
	rainMM    float64 // within the hours that the rule looks at
	wet       bool    // rain enough fell in them
}

// blightHours fires on the day on which a humid spell reaches so many effective
// hours: the Irish rules. They are counted from one hour of the spell on when it
// rained in the hours about the end of the first part, else from a later one. Its
// value is the most effective hours of the day. A spell fires once.
//
// Source: Bourke 1953 (whose own count begins with hour 12, one more); Cucak et
// al. 2019.
func blightHours(a *asked) (out []Reading) {
	var s spell
	action := int(a.n("action_hours"))
	for i := range a.w.Days {
		d := &a.w.Days[i]
		r := Reading{Date: d.Date}
		for j := d.from; j < d.to; j++ {
			if !a.w.follows(j) {
				s = spell{}
			}
			before := s.effective
			a.step(&s, &a.w.Hours[j])
			r.Value = max(r.Value, float64(s.effective))
			if before < action && s.effective >= action {
				r.Fired, r.Threshold = true, a.n("action_hours")
			}
		}
		if d.Humid || r.Fired {
			out = append(out, r)
		}
	}
	return out
}

// step takes one more hour into a spell.
func (a *asked) step(s *spell, h *climate.Hour) {
	humid := h.TempC >= a.n("temp_c") && h.HumidityPct >= a.n("rh_pct")
	if !humid {
		if s.broken++; s.length < int(a.n("spore_hours")) || s.broken > int(a.n("break_hours")) {
			*s = spell{}
		}
		return
	}
	s.broken = 0
	s.length++
	if n := float64(s.length); h.RainMM > 0 && n >= a.n("rain_from_hour") && n <= a.n("rain_to_hour") {
		s.rainMM += h.RainMM
		s.wet = s.wet || s.rainMM >= a.n("rain_mm")
	}
	from := int(a.n("dry_from_hour"))
	if s.wet {
		from = int(a.n("wet_from_hour"))
	}
	s.effective = max(s.effective, s.length-from+1)
	if s.length < int(a.n("spore_hours")) {
		s.effective = 0
	}
}
