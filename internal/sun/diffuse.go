package sun

// winterSunset is the sunset angle that parts the short days of the daily and
// monthly correlations from the others, 81.4 degrees [rad].
const winterSunset = 81.4 * degree

// DiffuseShare returns the diffuse part, 0-1, of a day's global radiation, from
// its clearness (see Clearness) and the sunset angle (see SunsetAngle) [rad].
//
// Held to 1 under the gloomiest skies, where the fit of the long days passes it
// by 0.008. Check: 0.6 at 100 degrees: 0.432; at 70 degrees: 0.353.
// Source: Erbs, Klein & Duffie 1982, the daily correlation, as in Duffie &
// Beckman, Solar Engineering of Thermal Processes, eq. 2.11.1.
func DiffuseShare(clearness, sunsetAngleRad float64) float64 {
	k := max(0, clearness)
	if sunsetAngleRad <= winterSunset {
		if k >= 0.715 {
			return 0.143
		}
		return min(1, 1+k*(-0.2727+k*(2.4495+k*(-11.9514+k*9.3879)))) // eq. 2.11.1
	}
	if k >= 0.722 {
		return 0.175
	}
	return min(1, 1+k*(0.2832+k*(-2.5557+k*0.8448))) // eq. 2.11.1
}

// DiffuseShareHourly returns the diffuse part, 0-1, of an hour's global
// radiation from the hour's clearness.
//
// Check: 0.405724: 0.831; 0.718133: 0.218.
// Source: Erbs, Klein & Duffie 1982, eq. 1.
func DiffuseShareHourly(clearness float64) float64 {
	k := max(0, clearness)
	switch {
	case k <= 0.22:
		return 1 - 0.09*k // eq. 1
	case k <= 0.80:
		return 0.9511 + k*(-0.1604+k*(4.388+k*(-16.638+k*12.336))) // eq. 1
	default:
		return 0.165
	}
}

// DiffuseShareMonthly returns the diffuse part, 0-1, of a month's mean global
// radiation from its mean clearness and the sunset angle of its middle [rad].
//
// Fitted for a clearness of 0.3 to 0.8, to which it is held. Check: 0.5 at 100
// degrees: 0.429. Source: Erbs, Klein & Duffie 1982, the monthly correlation, as
// in Duffie & Beckman eq. 2.12.1.
func DiffuseShareMonthly(clearness, sunsetAngleRad float64) float64 {
	k := max(0.3, min(0.8, clearness))
	if sunsetAngleRad <= winterSunset {
		return 1.391 + k*(-3.560+k*(4.189-k*2.137)) // eq. 2.12.1
	}
	return 1.311 + k*(-3.022+k*(3.427-k*1.821)) // eq. 2.12.1
}
