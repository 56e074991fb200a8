package water

// MonthSoilMJ returns the warmth that goes into the soil in a month [MJ/m2/day] from
// the mean air temperatures of the months before and after it [C].
//
// Check: 14.1 and 18.8: 0.33 (FAO-56 example 13). Source: FAO-56 eq. 43.
func MonthSoilMJ(beforeC, afterC float64) float64 { return 0.07 * (afterC - beforeC) } // eq. 43

// MonthSoilSinceMJ is MonthSoilMJ where the month after is not known yet: from the
// month before and the month itself [C].
//
// Check: 29.2 and 30.2: 0.14 (FAO-56 example 17). Source: FAO-56 eq. 44.
func MonthSoilSinceMJ(beforeC, meanC float64) float64 { return 0.14 * (meanC - beforeC) } // eq. 44

// HourSoilMJ returns the warmth that goes into the soil in an hour [MJ/m2/h] with a
// net radiation [MJ/m2/h]: a tenth of it while it is above 0, half of it by night.
//
// Check: 1.749: 0.175 (FAO-56 example 19). Source: FAO-56 eq. 45 and 46.
func HourSoilMJ(netMJ float64) float64 {
	if netMJ > 0 {
		return 0.1 * netMJ // eq. 45
	}
	return 0.5 * netMJ // eq. 46
}
