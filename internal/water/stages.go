package water

// Stages are the four stages of a crop by the calendar [d], where nothing is known of
// its leaves.
type Stages struct{ Initial, Development, Middle, Late float64 }

// Coefficient returns the crop coefficient on a day of the stages, from those of
// the initial stage, the middle and the end: straight lines between.
//
// Check: dry beans, 25+25+30+20 days, 0.15, 1.19, 0.35: 0.77 on day 40 (FAO-56 example
// 28). Source: FAO-56 eq. 66.
func (s Stages) Coefficient(day, initial, middle, end float64) float64 {
	switch {
	case day <= s.Initial:
		return initial
	case day <= s.Initial+s.Development:
		return initial + (day-s.Initial)/s.Development*(middle-initial) // eq. 66
	case day <= s.Initial+s.Development+s.Middle:
		return middle
	}
	past := min(s.Late, day-s.Initial-s.Development-s.Middle)
	return middle + past/s.Late*(end-middle) // eq. 66
}

// BetweenWettings returns the coefficient of the initial stage for wettings of a depth
// [mm] between the light ones of 10 mm and the heavy ones of 40 mm, from the
// coefficients for both.
//
// Check: 20 mm, 0.55 and 0.7: 0.60 (FAO-56 example 25). Source: FAO-56 eq. 59.
func BetweenWettings(depthMM, light, heavy float64) float64 {
	return light + (depthMM-10)/(40-10)*(heavy-light) // eq. 59
}

// DepthWhereWet returns how deep water stands [mm] on the share of the ground that
// is wetted, of a depth over all of it.
//
// Check: 12 mm on 0.4: 30 (FAO-56 example 26). Source: FAO-56 eq. 61.
func DepthWhereWet(depthMM, wetted float64) float64 { return depthMM / wetted } // eq. 61
