package sun

import "math"

const (
	// solarConstant is the radiation above the air at the mean distance of the
	// sun [MJ/m2/min] (FAO-56 eq. 21).
	solarConstant = 0.0820

	// AngstromA and AngstromB are the shares of the radiation above the air
	// that arrive on an overcast day and, in addition, on a cloudless one, where
	// no local values are known (FAO-56, below eq. 35).
	AngstromA = 0.25
	AngstromB = 0.50

	// PARShare is the part of the sun's radiation that plants can use, 400-700
	// nm, by energy: 0.50 within 0.03 for beam and sky together, whatever the
	// weather (Szeicz 1974, J. Applied Ecology 11:617-636; Stanhill & Fuchs 1977,
	// same journal, measured 0.49 and advise 0.5).
	PARShare = 0.50
)

// ExtraterrestrialMJ returns the radiation above the air on a level surface
// [MJ/m2/day] at a latitude [degrees, south negative] on a day of the year
// [1-366]: 0 in the polar night.
//
// Check: 20 S, day 246: 32.2 (FAO-56 example 8). Source: FAO-56 eq. 21.
func ExtraterrestrialMJ(latitudeDeg float64, dayOfYear int) float64 {
	dec, sunset := Declination(dayOfYear), SunsetAngle(latitudeDeg, dayOfYear)
	sinLat, cosLat := math.Sincos(latitudeDeg * degree)
	sinDec, cosDec := math.Sincos(dec)
	ra := 24 * 60 / math.Pi * solarConstant * InverseDistance(dayOfYear) *
		(sunset*sinLat*sinDec + cosLat*cosDec*math.Sin(sunset)) // eq. 21
	return max(0, ra)
}

// InverseDistance returns how much stronger the sun is for its distance on a day of
// the year [1-366] than at its mean distance. Check: day 246: 0.985 (FAO-56 example
// 8). Source: FAO-56 eq. 23.
func InverseDistance(dayOfYear int) float64 {
	return 1 + 0.033*math.Cos(2*math.Pi/365*float64(dayOfYear)) // eq. 23
}

// ClearSkyMJ returns the global radiation of a cloudless day [MJ/m2/day] from
// the radiation above the air [MJ/m2/day] and the height above the sea [m].
//
// Check: 41.09 and 100 m: 30.90 (FAO-56 example 18). Source: FAO-56 eq. 37.
func ClearSkyMJ(extraterrestrialMJ, elevationM float64) float64 {
	return (0.75 + 2e-5*elevationM) * extraterrestrialMJ // eq. 37
}

// AngstromMJ returns global radiation [MJ/m2/day] from the radiation above the
// air [MJ/m2/day], the hours of bright sunshine and the possible hours (see
// DaylightH). Sunshine beyond the possible hours, which recorders show near the
// solstices, counts as a full day; where no daylight is possible the sky counts
// as overcast.
//
// Check: 25.1, 7.1 h of 10.9 h: 14.5 (FAO-56 example 10). Source: FAO-56 eq. 35.
func AngstromMJ(extraterrestrialMJ, sunshineH, daylightH float64) float64 {
	share := 0.0
	if daylightH > 0 {
		share = max(0, min(1, sunshineH/daylightH))
	}
	return (AngstromA + AngstromB*share) * extraterrestrialMJ // eq. 35
}

// SunshineH returns the hours of bright sunshine that AngstromMJ would turn
// into the given global radiation [MJ/m2/day]: between nothing and the possible
// hours. Nothing where there is no radiation above the air.
//
// Source: FAO-56 eq. 35, solved for n.
func SunshineH(extraterrestrialMJ, radiationMJ, daylightH float64) float64 {
	return SunshineShare(extraterrestrialMJ, radiationMJ) * daylightH
}

// SunshineShare returns the share of the possible sunshine, 0-1, that a day's
// global radiation stands for, both radiations in MJ/m2/day. Nothing where
// there is no radiation above the air.
//
// Source: FAO-56 eq. 35, solved for n/N.
func SunshineShare(extraterrestrialMJ, radiationMJ float64) float64 {
	if extraterrestrialMJ <= 0 {
		return 0
	}
	share := (radiationMJ/extraterrestrialMJ - AngstromA) / AngstromB // eq. 35
	return max(0, min(1, share))
}

// Clearness returns the share of the radiation above the air that arrives, 0-1,
// both in MJ/m2/day. Nothing where there is none above the air.
func Clearness(extraterrestrialMJ, radiationMJ float64) float64 {
	if extraterrestrialMJ <= 0 {
		return 0
	}
	return max(0, min(1, radiationMJ/extraterrestrialMJ))
}

// The adjustment coefficients of HargreavesMJ [C to the power -0.5] (FAO-56,
// below eq. 50).
const (
	Inland  = 0.16 // where a land mass decides the air
	Coastal = 0.19 // on or near the shore of a large land mass
)

// HargreavesMJ returns global radiation [MJ/m2/day] from the radiation above
// the air [MJ/m2/day], the day's minimum and maximum [C] and the coefficient,
// Inland or Coastal. It can pass the clear sky on days with a very wide range:
// hold it to ClearSkyMJ.
//
// Check: 40.6, 14.8 to 26.6 C, Inland: 22.3 (FAO-56 example 15).
// Source: Hargreaves & Samani 1982, in FAO-56 eq. 50.
func HargreavesMJ(extraterrestrialMJ, tMinC, tMaxC, coefficient float64) float64 {
	return coefficient * math.Sqrt(max(0, tMaxC-tMinC)) * extraterrestrialMJ // eq. 50
}
