package climate

import "math"

// WindAt2M returns the wind at 2 m [m/s] where it was measured over short grass at
// another height above the ground [m, 0.1 or more].
//
// Check: 3.2 m/s at 10 m: 2.4 (FAO-56 example 14). Source: FAO-56 eq. 47.
func WindAt2M(measuredMS, heightM float64) float64 {
	return measuredMS * 4.87 / math.Log(67.8*heightM-5.42) // eq. 47
}
