package growth

import "garner/internal/crop"

// emergenceRate returns the share of emergence that a day at soil temperature
// soilC [C] brings: thermal time above the base, capped at the optimum, over
// the thermal time to half the seedlings.
//
// Source: Bierhuizen & Wagenvoort 1974, Some aspects of seed germination in
// vegetables 1, Scientia Horticulturae 2:213-219 (linear form; the cap and the
// ceiling after Harrington & Minges 1954, whose days stop falling above an
// optimum).
func emergenceRate(u *crop.Use, soilC float64) float64 {
	if soilC <= u.EmergeBaseC || soilC >= u.EmergeCeilingC {
		return 0
	}
	return (min(soilC, u.EmergeOptimumC) - u.EmergeBaseC) / u.EmergeThermalCd
}

// EmergenceDays returns the days to half the seedlings at a steady soil
// temperature [C], and false when none emerge.
func EmergenceDays(u *crop.Use, soilC float64) (float64, bool) {
	r := emergenceRate(u, soilC)
	if r <= 0 {
		return 0, false
	}
	return 1 / r, true
}
