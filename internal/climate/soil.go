package climate

import "math"

// Soil is the daily mean temperature of bare or thinly covered ground at sowing
// depth, about 5 cm.
//
// The ground is driven by the air and by the sun: the surface settles at the
// air's mean plus what radiation adds less what it loses to the sky, and the
// ground follows that in two layers, a shallow one over days and a deep one
// over months. Air alone, damped and delayed, has the wrong sign at the coast:
// there the ground swings wider than the air and runs ahead of it.
// Below freezing the surface is taken to be partly shielded by snow and by the
// water that freezes.
//
// A Soil is a value; copy it to branch.
type Soil struct {
	shallowC, deepC float64
}

// The constants of the soil layers, fitted on Valentia 1961-2021 at 10 cm and
// made a little quicker for the lesser depth.
const (
	soilPerMJ    = 0.26  // what radiation adds to the surface [C per MJ/m2/day]
	soilLoss     = 1.6   // what the surface loses to the sky and by evaporation [C]
	soilFollow   = 0.33  // share of the gap to the surface closed in a day
	soilExchange = 0.04  // share of the gap to the deep layer closed in a day
	deepFollow   = 0.015 // share of the deep layer's gap closed in a day
	frostShield  = 0.35  // share of the frost at the surface that reaches the ground
)

// NewSoil starts the ground from the mean air temperature [C] and radiation
// [MJ/m2/day] of the month or so before the first day; a fortnight later little
// is left of a poor guess.
func NewSoil(meanC, radiationMJ float64) Soil {
	s := surfaceC(meanC, radiationMJ)
	return Soil{shallowC: s, deepC: s}
}

// surfaceC is what the ground's surface settles at.
func surfaceC(meanC, radiationMJ float64) float64 {
	t := meanC + soilPerMJ*radiationMJ - soilLoss
	return math.Max(t, t*frostShield)
}

// Step moves the ground on by a day of the given mean air temperature [C] and
// global radiation on it [MJ/m2] and returns the day's soil temperature [C].
func (s *Soil) Step(meanC, radiationMJ float64) float64 {
	t := meanC + soilPerMJ*radiationMJ - soilLoss
	if t < 0 {
		t *= frostShield
	}
	toDeep := s.deepC - s.shallowC
	s.shallowC += soilFollow*(t-s.shallowC) + soilExchange*toDeep
	s.deepC -= deepFollow * toDeep
	return s.shallowC
}

// TemperatureC is the ground's temperature now [C].
func (s Soil) TemperatureC() float64 { return s.shallowC }
