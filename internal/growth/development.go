package growth

import "garner/internal/crop"

// developmentRate returns the day's share of the way from emergence to first
// use. It is zero while a gate is closed.
func (s *Plants) developmentRate(p *Parameters, a *Air, warmth float64) float64 {
	if s.bestDays <= 0 {
		return 0
	}
	if p.Use.GateStage > 0 && s.Development >= p.Use.GateStage && !gateOpen(p.Use, s.Chill, a.DayLengthH) {
		return 0
	}
	return warmth * a.Light / s.bestDays
}

// gateOpen tells whether development may pass the gate: the day long or short
// enough for bulb or tuber, the winter's chill gathered for curd or bud.
// Thresholds: the crop book (Brewster 2008 for onion bulbing; Wurr and
// co-workers for cauliflower curds; as cited there).
func gateOpen(u *crop.Use, chill, dayLengthH float64) bool {
	if u.GateLongH > 0 && dayLengthH < u.GateLongH {
		return false
	}
	if u.GateShortH > 0 && dayLengthH > u.GateShortH {
		return false
	}
	return chill >= u.GateChill
}
