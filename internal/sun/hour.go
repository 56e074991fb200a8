package sun

import "math"

// SeasonalH returns the seasonal correction of solar time [h] on a day of the year
// [1-366]. Check: day 274: 0.1889 (FAO-56 example 19). Source: FAO-56 eq. 32.
func SeasonalH(dayOfYear int) float64 {
	b := seasonAngle(dayOfYear)
	return 0.1645*math.Sin(2*b) - 0.1255*math.Cos(b) - 0.025*math.Sin(b) // eq. 32
}

// seasonAngle is the day of the year as an angle [rad] (FAO-56 eq. 33).
func seasonAngle(dayOfYear int) float64 { return 2 * math.Pi * float64(dayOfYear-81) / 364 }

// HourAngle returns the sun's angle past noon [rad] at a time of the clock [h], at a
// longitude [degrees, west negative] in a time zone whose middle lies at zoneDeg
// [degrees, west negative].
//
// Check: 14.5 h, 16.25 W in the zone of 15 W, day 274: 0.682 (FAO-56 example 19).
// Source: FAO-56 eq. 31.
func HourAngle(clockH, longitudeDeg, zoneDeg float64, dayOfYear int) float64 {
	return math.Pi / 12 * (clockH + (longitudeDeg-zoneDeg)/15 + SeasonalH(dayOfYear) - 12) // eq. 31
}

// ExtraterrestrialHourMJ returns the radiation above the air on a level surface
// [MJ/m2] from one angle of the sun to another [rad], those of at most a few hours.
//
// Check: 16.22 N, day 274, 0.5512 to 0.8130: 3.543 (FAO-56 example 19). Source:
// FAO-56 eq. 28.
func ExtraterrestrialHourMJ(latitudeDeg float64, dayOfYear int, from, to float64) float64 {
	sunset := SunsetAngle(latitudeDeg, dayOfYear)
	from, to = max(-sunset, from), min(sunset, to)
	if to <= from {
		return 0
	}
	sinLat, cosLat := math.Sincos(latitudeDeg * degree)
	sinDec, cosDec := math.Sincos(Declination(dayOfYear))
	return max(0, 12*60/math.Pi*solarConstant*InverseDistance(dayOfYear)*
		((to-from)*sinLat*sinDec+cosLat*cosDec*(math.Sin(to)-math.Sin(from)))) // eq. 28
}
