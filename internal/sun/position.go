package sun

import "math"

// Position is where the centre of the sun stands, seen from the ground.
type Position struct {
	ElevationDeg   float64 // above the level horizon, without refraction; negative at night
	AzimuthDeg     float64 // from north by east, 0 to 360
	DeclinationDeg float64 // north of the equator
}

const (
	degree = math.Pi / 180 // radians

	// unixEpochJD is the Julian date of 1970-01-01 00:00 UT.
	unixEpochJD = 2440587.5
	// j2000JD is the Julian date of the epoch J2000.0 (Meeus 1998, p. 133).
	j2000JD = 2451545.0
	// parallaxDeg is the sun's horizontal parallax at its mean distance,
	// 8.794 seconds of arc (Meeus 1998, ch. 40).
	parallaxDeg = 8.794 / 3600
)

// PositionAt returns the sun's position over a location at a moment, given in
// seconds since 1970-01-01 00:00 UTC.
//
// Good to 0.01 degrees from 1950 to 2050. Universal time stands in for
// dynamical time, which costs 0.001 degrees. Check: 39.742476 N, 105.1786 W,
// 2003-10-17 19:30:30 UTC: elevation 39.872, azimuth 194.340 (Reda & Andreas
// 2003, NREL/TP-560-34302).
// Source: Meeus 1998, ch. 12, 13, 25 and 40.
func PositionAt(at Location, unixSeconds int64) Position {
	days := unixEpochJD - j2000JD + float64(unixSeconds)/86400
	s := apparentSun(days / 36525) // eq. 25.1
	hourAngle := siderealDeg(days)*degree + s.nutation*math.Cos(s.obliquity) +
		at.LongitudeDeg*degree - s.rightAscension
	sinLat, cosLat := math.Sincos(at.LatitudeDeg * degree)
	sinDec, cosDec := math.Sincos(s.declination)
	sinH, cosH := math.Sincos(hourAngle)
	sinElevation := sinLat*sinDec + cosLat*cosDec*cosH                 // eq. 13.6
	south := math.Atan2(sinH*cosDec, cosH*cosDec*sinLat-sinDec*cosLat) // eq. 13.5
	elevation := math.Asin(max(-1, min(1, sinElevation)))
	return Position{
		ElevationDeg:   elevation/degree - parallaxDeg*math.Cos(elevation), // eq. 40.1, flattened
		AzimuthDeg:     fullTurn(south/degree + 180),
		DeclinationDeg: s.declination / degree,
	}
}

// apparent is the sun as seen from the centre of the earth, in radians.
type apparent struct{ rightAscension, declination, obliquity, nutation float64 }

// apparentSun returns the apparent sun at t Julian centuries from J2000.0
// (Meeus 1998, ch. 25, low accuracy: 0.01 degrees).
func apparentSun(t float64) apparent {
	meanLongitude := 280.46646 + t*(36000.76983+t*0.0003032)         // eq. 25.2
	anomaly := (357.52911 + t*(35999.05029-t*0.0001537)) * degree    // eq. 25.3
	centre := (1.914602-t*(0.004817+t*0.000014))*math.Sin(anomaly) + // p. 164
		(0.019993-t*0.000101)*math.Sin(2*anomaly) + 0.000289*math.Sin(3*anomaly)
	node := (125.04 - 1934.136*t) * degree // p. 164
	nutation := -0.00478 * math.Sin(node)
	longitude := (meanLongitude + centre - 0.00569 + nutation) * degree
	obliquity := (23.439291 - t*0.0130042 + 0.00256*math.Cos(node)) * degree // eq. 22.2, 25.8
	sinLong, cosLong := math.Sincos(longitude)
	sinObl, cosObl := math.Sincos(obliquity)
	return apparent{
		rightAscension: math.Atan2(cosObl*sinLong, cosLong), // eq. 25.6
		declination:    math.Asin(sinObl * sinLong),         // eq. 25.7
		obliquity:      obliquity,
		nutation:       nutation * degree,
	}
}

// siderealDeg returns the mean sidereal time at Greenwich, in degrees and not
// reduced to one turn, days after J2000.0 (Meeus 1998, eq. 12.4 without its
// terms in T squared and cubed, under 0.0002 degrees in this century).
func siderealDeg(days float64) float64 {
	return 280.46061837 + 360.98564736629*days
}

// fullTurn brings an angle to 0 or more and under 360 degrees.
func fullTurn(deg float64) float64 {
	deg = math.Mod(deg, 360)
	if deg < 0 {
		deg += 360
	}
	if deg >= 360 { // a hair under nothing rounds up to a full turn
		return 0
	}
	return deg
}

// RefractionDeg returns how much higher the air lets the sun appear [degrees]
// at a true elevation [degrees], air pressure [hPa] and temperature [C].
//
// Nothing below -1 degrees, where the sun is out of sight. Check: 39.872046
// degrees, 820 hPa, 11 C: 0.016332 (Reda & Andreas 2003).
// Source: Meeus 1998, eq. 16.4 and the factor on p. 107.
func RefractionDeg(trueElevationDeg, pressureHPa, airC float64) float64 {
	if trueElevationDeg < -1 {
		return 0
	}
	h := trueElevationDeg
	minutes := 1.02 / math.Tan((h+10.3/(h+5.11))*degree)          // eq. 16.4
	return minutes / 60 * pressureHPa / 1010 * 283 / (273 + airC) // p. 107
}
