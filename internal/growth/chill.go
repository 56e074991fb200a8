package growth

import "garner/internal/crop"

// chillMargin is how far beyond the effective range chill still counts in part.
const chillMargin = 5.0

// chillRate returns the chill days that a day of mean temperature meanC brings:
// 1 inside the crop's range, falling in a straight line to 0 within 5 C beyond
// it (the trapezium of Atherton, Craigon & Basher 1990 for carrot; ranges by
// crop in the book).
func chillRate(u *crop.Use, meanC float64) float64 {
	if meanC < u.ChillLowC {
		return max(0, 1-(u.ChillLowC-meanC)/chillMargin)
	}
	return min(1, max(0, 1-(meanC-u.ChillHighC)/chillMargin))
}

// seedingRate returns the day's thermal time towards running to seed [C d]: it
// counts once the plant is past its juvenile stage, the chill is gathered, and
// while days are long enough.
func (s *Plants) seedingRate(u *crop.Use, a *Air) float64 {
	if s.Development < u.BoltJuvenile || s.Chill < u.BoltChill || a.DayLengthH < u.BoltLongH {
		return 0
	}
	return max(0, a.MeanC-u.BaseC)
}
