package water

// Easy returns the share of the water within reach that a crop takes before it
// feels a want, on a day on which soil and crop lose demandMM: the tabulated share at 5
// mm a day, less when more is asked, held to 0.1-0.8.
//
// Check: 0.40 at 5 mm: 0.40. Source: FAO-56 Table 22, footnote 2.
func Easy(tabulated, demandMM float64) float64 {
	return held(tabulated+0.04*(5-demandMM), 0.1, 0.8)
}

// Stress returns the share of its water that a crop still gets, 0-1, of heldMM within
// its reach when missingMM are gone: all of it until the easy share is used up, then
// ever less (Ks).
//
// Check: 160 mm, 67 missing, 0.40: 0.97 (FAO-56 example 37). Source: FAO-56 eq. 84.
func Stress(heldMM, missingMM, easy float64) float64 {
	if missingMM <= easy*heldMM {
		return 1
	}
	if heldMM <= 0 || easy >= 1 {
		return 0
	}
	return max(0, (heldMM-missingMM)/((1-easy)*heldMM)) // eq. 84
}

// StressOfYield returns the share of its water that a crop must have got to give a
// share of its full yield, by its response factor to water (Ky).
//
// Check: 1,100 of 1,800 kg/ha of dry beans, 1.15: 0.66 (FAO-56 example 44). Source:
// FAO-56 eq. 103.
func StressOfYield(share, response float64) float64 { return 1 - (1-share)/response } // eq. 103
