package water

// LeastMM returns the least water [mm] with which a crop does not come to want on a day
// like the given one, 0 where it does not anyway. It is never more than fills the
// ground.
//
// With it the crop gets all it asks for on that day: property, see the tests.
func (b *Balance) LeastMM(s *Soil, on *Stand, g *Given) float64 {
	most := b.DueMM(s, on, g)
	if most <= 0 {
		return 0
	}
	low, high := 0.0, most
	for range leastSteps {
		mm := (low + high) / 2
		tried, wet := *b, *g
		wet.IrrigationMM = mm
		f := tried.Day(s, on, &wet)
		if f.Stress >= 1 && Stress(s.HeldMM(on.reachM()), tried.MissingMM, on.easy(f.LostMM())) >= 1 {
			high = mm
		} else {
			low = mm
		}
	}
	return high
}

// leastSteps halve the span often enough for a twentieth of a millimetre.
const leastSteps = 10

// YieldLost returns the share of its yield that a crop loses, 0-1, when it got a share of
// the water it asked for, by its response factor to water (Ky).
//
// It undoes StressOfYield. Check: 0.66 of the water of dry beans, 1.15: 0.39 (FAO-56
// example 44, the other way round). Source: FAO-56 eq. 90.
func YieldLost(got, response float64) float64 { return held(response*(1-got), 0, 1) } // eq. 90
