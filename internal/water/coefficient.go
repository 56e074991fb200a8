package water

import "math"

// LeastCoefficient is the least basal coefficient of ground with anything growing
// on it (FAO-56, Kc min of eq. 76).
const LeastCoefficient = 0.15

// AdjustedForClimate returns a tabulated crop coefficient, which holds for 45 % least
// humidity and 2 m/s of wind, in another climate: the least relative humidity of
// the day [%], the wind at 2 m [m/s] and the height of the crop [m]. Tabulated
// values below 0.45 stay as they are. The paper's limits, 1-6 m/s, 20-80 % and 0.1-10 m,
// hold what is given.
//
// It rises with wind and falls with humidity. Check: 1.20, 2 m, 1.3 m/s, 75 %: 1.07
// (FAO-56 example 27). Source: FAO-56 eq. 62, 65 and 70.
func AdjustedForClimate(coefficient, leastPct, windMS, heightM float64) float64 {
	if coefficient < 0.45 {
		return coefficient
	}
	return coefficient + climateStep(leastPct, windMS, heightM)
}

// climateStep is what a climate adds to a coefficient of tall or wind-swept crops.
func climateStep(leastPct, windMS, heightM float64) float64 {
	windMS, leastPct, heightM = held(windMS, 1, 6), held(leastPct, 20, 80), held(heightM, 0, 10)
	return (0.04*(windMS-2) - 0.004*(leastPct-45)) * math.Pow(heightM/3, 0.3)
}

func held(x, low, high float64) float64 { return max(low, min(high, x)) }

// MostCoefficient returns the most that soil and crop together can lose, as a
// coefficient, on a day with a least relative humidity [%] and a wind at 2 m [m/s],
// over a crop of a height [m] with a basal coefficient.
//
// Check: 1.6 m/s, 35 %, 0.3 m: 1.21 (FAO-56 example 35). Source: FAO-56 eq. 72.
func MostCoefficient(basal, leastPct, windMS, heightM float64) float64 {
	return max(1.2+climateStep(leastPct, windMS, heightM), basal+0.05) // eq. 72
}

// CoverOf returns the share of the ground that a crop covers, 0-1, where only its
// basal coefficient, the most one and its height [m] are known.
//
// Check: 0.9, 1.30, 1 m: 0.53 (FAO-56 example 32). Source: FAO-56 eq. 76.
func CoverOf(basal, most, heightM float64) float64 {
	if most <= LeastCoefficient {
		return 0
	}
	share := max(0, basal-LeastCoefficient) / (most - LeastCoefficient)
	return min(0.99, math.Pow(share, 1+0.5*heightM)) // eq. 76
}

// Density returns which share of its full coefficient a crop reaches that covers a
// share of the ground, 0-1, at a height [m]: tall plants lose more for the ground they
// cover, and never more than twice it.
//
// Source: FAO-56 eq. 98.
func Density(cover, heightM float64) float64 {
	cover = held(cover, 0, 1)
	return min(1, 2*cover, math.Pow(cover, 1/(1+max(0, heightM)))) // eq. 98
}
