package water

import "math"

// PressureKPa returns the usual pressure of the air [kPa] at a height above the
// sea [m], for an air of 20 C.
//
// Check: 1,800 m: 81.8 (FAO-56 example 2). Source: FAO-56 eq. 7.
func PressureKPa(elevationM float64) float64 {
	return 101.3 * math.Pow((293-0.0065*elevationM)/293, 5.26) // eq. 7
}

// PsychrometricKPaC returns the psychrometric constant [kPa/C] at a pressure of
// the air [kPa].
//
// Check: 81.8 kPa: 0.054 (FAO-56 example 2). Source: FAO-56 eq. 8.
func PsychrometricKPaC(pressureKPa float64) float64 {
	return 0.665e-3 * pressureKPa // eq. 8
}
