package sun

import "math"

// diskDeg is the true elevation of the centre of the disc at sunrise and
// sunset: 34 minutes of refraction and 16 of half the disc (Meeus 1998, ch. 15).
const diskDeg = -0.8333

// DayLengthH returns the time from sunrise to sunset [h] at a latitude
// [degrees, south negative] on a day of the year [1-366].
//
// Sunrise is the upper edge of the sun on a level horizon through ordinary air.
// 0 where the sun does not rise, 24 where it does not set. Good to two minutes
// up to 60 degrees: the leap year moves the declination about its mean.
// Source: Spencer 1971 for the declination; Meeus 1998, eq. 15.1.
func DayLengthH(latitudeDeg float64, dayOfYear int) float64 {
	dec := spencerDeclination(dayOfYear)
	sinLat, cosLat := math.Sincos(latitudeDeg * degree)
	sinDec, cosDec := math.Sincos(dec)
	cosHalf := (math.Sin(diskDeg*degree) - sinLat*sinDec) / (cosLat * cosDec) // eq. 15.1
	return 24 / math.Pi * arcCosine(cosHalf)
}

// spencerDeclination returns the sun's declination [rad] at noon of a day of a
// mean year, within 0.0006 rad of that year (Spencer 1971).
func spencerDeclination(dayOfYear int) float64 {
	g := 2 * math.Pi * float64(dayOfYear-1) / 365
	sin1, cos1 := math.Sincos(g)
	sin2, cos2 := math.Sincos(2 * g)
	sin3, cos3 := math.Sincos(3 * g)
	return 0.006918 - 0.399912*cos1 + 0.070257*sin1 -
		0.006758*cos2 + 0.000907*sin2 - 0.002697*cos3 + 0.00148*sin3
}

// Declination returns the sun's declination [rad] on a day of the year [1-366].
//
// Within 0.4 degrees; for the radiation formulas of the same paper, which are
// calibrated with it. Check: day 246: 0.120 (FAO-56 example 8).
// Source: FAO-56 eq. 24.
func Declination(dayOfYear int) float64 {
	return 0.409 * math.Sin(2*math.Pi/365*float64(dayOfYear)-1.39) // eq. 24
}

// SunsetAngle returns the hour angle of sunset [rad, 0 to pi] at a latitude
// [degrees, south negative] on a day of the year [1-366]: 0 where the sun does
// not rise, pi where it does not set.
//
// Check: 20 S, day 246: 1.527 (FAO-56 example 8). Source: FAO-56 eq. 25.
func SunsetAngle(latitudeDeg float64, dayOfYear int) float64 {
	return arcCosine(-math.Tan(latitudeDeg*degree) * math.Tan(Declination(dayOfYear))) // eq. 25
}

// DaylightH returns the greatest possible sunshine [h] at a latitude [degrees,
// south negative] on a day of the year [1-366]: from geometry alone, the centre
// of the sun on the horizon, without refraction.
//
// Check: 20 S, day 246: 11.7 (FAO-56 example 9). Source: FAO-56 eq. 34.
func DaylightH(latitudeDeg float64, dayOfYear int) float64 {
	return 24 / math.Pi * SunsetAngle(latitudeDeg, dayOfYear) // eq. 34
}

// arcCosine is the arc cosine of x held to -1 to 1: beyond them the sun does
// not set or does not rise.
func arcCosine(x float64) float64 { return math.Acos(max(-1, min(1, x))) }
