package growth

import "garner/internal/crop"

// developmentRate returns the day's share of the way from emergence to first
// use, from the day's temperature response and the light factor at the top of
// the canopy. A closed gate holds it at the gate's stage.
func (s *Plants) developmentRate(p *Parameters, a *Air, warmth, light float64) float64 {
	if s.bestDays <= 0 {
		return 0
	}
	rate := warmth * light / s.bestDays
	if gate := p.Use.GateStage; gate > 0 && s.Development+rate > gate && !s.passed(p.Use, a) {
		return max(0, gate-s.Development)
	}
	return rate
}

// passed tells whether the gate is open or has been before.
func (s *Plants) passed(u *crop.Use, a *Air) bool {
	return s.Development > u.GateStage || gateOpen(u, s.Chill, a.DayLengthH)
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
