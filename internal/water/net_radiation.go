package water

import "math"

const (
	// albedo is the share of the radiation that the reference crop throws back
	// (FAO-56, below eq. 38).
	albedo = 0.23

	// boltzmannMJ is the constant of Stefan and Boltzmann [MJ/K4/m2/day] (FAO-56
	// eq. 39).
	boltzmannMJ = 4.903e-9

	// zeroK is 0 C [K] (FAO-56 eq. 39).
	zeroK = 273.16

	// leastCloudless is the least ratio of a day's radiation to that of a clear sky
	// with which the long-wave formula is used: below it the sky is overcast
	// (American Society of Civil Engineers 2005, The ASCE standardized reference
	// evapotranspiration equation, eq. 18). Clear skies count as 1 at most (FAO-56,
	// below eq. 39).
	leastCloudless = 0.3
)

// NetShortMJ returns the solar radiation that the reference crop keeps
// [MJ/m2/day] of what falls on it [MJ/m2/day].
//
// Check: 14.5: 11.1 (FAO-56 example 12, of the unrounded 14.46). Source: FAO-56
// eq. 38.
func NetShortMJ(radiationMJ float64) float64 { return (1 - albedo) * radiationMJ } // eq. 38

// NetLongMJ returns the warmth that ground under the open sky radiates away
// [MJ/m2/day] on a day with these extremes [C] and actual vapour pressure [kPa].
// cloudless is the day's radiation as a share of a clear sky's (Cloudless).
//
// Check: 19.1 to 25.1 C, 2.1 kPa, 0.77: 3.5 (FAO-56 example 11). Source: FAO-56
// eq. 39.
func NetLongMJ(tMinC, tMaxC, vapourKPa, cloudless float64) float64 {
	return (BlackBodyMJ(tMaxC) + BlackBodyMJ(tMinC)) / 2 * dampness(vapourKPa) * clearing(cloudless) // eq. 39
}

// BlackBodyMJ returns the warmth that a black body radiates at t [C] in a day
// [MJ/m2/day]. Check: 25.1 C: 38.8 (FAO-56 example 11). Source: FAO-56 eq. 39.
func BlackBodyMJ(t float64) float64 { return boltzmannMJ * fourth(t+zeroK) }

// dampness is the share of the warmth that gets past the vapour of the air, 0-1,
// and clearing the share that clouds leave (FAO-56 eq. 39).
func dampness(vapourKPa float64) float64 { return 0.34 - 0.14*math.Sqrt(vapourKPa) }
func clearing(cloudless float64) float64 { return 1.35*cloudless - 0.35 }

// Cloudless returns a day's radiation as a share of that of a clear sky, both
// under the open sky [MJ/m2/day], held to 0.3-1. Where the sun gives nothing, the
// sky counts as overcast.
func Cloudless(radiationMJ, clearSkyMJ float64) float64 {
	if clearSkyMJ <= 0 {
		return leastCloudless
	}
	return max(leastCloudless, min(1, radiationMJ/clearSkyMJ))
}

func fourth(x float64) float64 { x *= x; return x * x }
