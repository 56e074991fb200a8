package climate

// Soil is the daily mean temperature of bare or thinly covered ground at sowing
// depth, about 5 cm.
//
// The ground is driven by the air and by the sun: the surface settles at the
// air's mean plus what radiation adds less what it loses to the sky, and the
// ground follows that in two layers, a shallow one over days and a deep one
// over weeks. Air alone, damped and delayed, has the wrong sign at the coast:
// there the ground swings wider than the air and runs ahead of it.
// Below freezing the surface is taken to be partly shielded by snow and by the
// water that freezes.
//
// A Soil is a value; copy it to branch.
type Soil struct {
	shallowC, deepC float64
}

// The constants of the soil layers: least squares on the daily 10 cm soil
// temperatures of Valentia (Met Eireann) in the even years from 2000 on. In the
// odd years they are 0.93 C off (root mean square), 0.7-1.1 C by month, and a
// month's mean at most 0.45 C. At 5 cm the days swing a little more than at 10.
const (
	soilPerMJ    = 0.2162 // what radiation adds to the surface [C per MJ/m2/day]
	soilLoss     = 1.089  // what the surface loses to the sky and by evaporation [C]
	soilFollow   = 0.4416 // share of the gap to the surface closed in a day
	soilExchange = 0.1097 // share of the gap to the deep layer closed in a day
	deepFollow   = 0.1168 // share of the deep layer's gap closed in a day
	// frostShield is the share of the frost at the surface that reaches the
	// ground. judgement: under snow and wet soil that freezes a fifth to a half.
	frostShield = 0.35
)

// NewSoil starts the ground from the mean air temperature [C] and radiation
// [MJ/m2/day] of the month or so before the first day; three weeks later
// little is left of a poor guess.
func NewSoil(meanC, radiationMJ float64) Soil {
	s := surfaceC(meanC, radiationMJ)
	return Soil{shallowC: s, deepC: s}
}

// surfaceC is what the ground's surface settles at [C].
func surfaceC(meanC, radiationMJ float64) float64 {
	t := meanC + soilPerMJ*radiationMJ - soilLoss
	if t < 0 {
		return t * frostShield
	}
	return t
}

// Step moves the ground on by a day of the given mean air temperature [C] and
// global radiation on it [MJ/m2] and returns the day's soil temperature [C].
func (s *Soil) Step(meanC, radiationMJ float64) float64 {
	t := surfaceC(meanC, radiationMJ)
	toDeep := s.deepC - s.shallowC
	s.shallowC += soilFollow*(t-s.shallowC) + soilExchange*toDeep
	s.deepC -= deepFollow * toDeep
	return s.shallowC
}

// TemperatureC is the ground's temperature now [C].
func (s Soil) TemperatureC() float64 { return s.shallowC }
