package climate

import "math"

// NoUpper stands for no upper limit in the degree-day methods [C].
var NoUpper = math.Inf(1)

// DegreeDays returns a day's heat above a base [C d] from its minimum and
// maximum [C]: the mean of the two less the base, not below nothing.
//
// Check: 46 and 67 F over 50 F: 6.5 F d (Cornell NEWA).
// Source: McMaster & Wilhelm 1997, Agric. For. Meteorology 87:291-300, method 1.
func DegreeDays(tMinC, tMaxC, baseC float64) float64 {
	return math.Max(0, (tMinC+tMaxC)/2-baseC)
}

// DegreeDaysModified returns a day's heat above a base [C d], the minimum and
// the maximum [C] each held between the base and the upper limit first.
//
// Check: 55 and 80 F over 50 F up to 86 F: 17.5 F d (Iowa State University).
// Source: McMaster & Wilhelm 1997, method 2; with 50 and 86 F the corn method of
// the United States.
func DegreeDaysModified(tMinC, tMaxC, baseC, upperC float64) float64 {
	low := math.Max(baseC, math.Min(upperC, tMinC))
	high := math.Max(baseC, math.Min(upperC, tMaxC))
	return (low+high)/2 - baseC
}

// DegreeDaysSine returns a day's heat above a base [C d] under a sine wave
// between its minimum and maximum [C].
//
// Check: 34 and 60 F over 50 F: 2.749 F d.
// Source: Baskerville & Emin 1969, Ecology 50:514-517.
func DegreeDaysSine(tMinC, tMaxC, baseC float64) float64 {
	mean, half := (tMinC+tMaxC)/2, (tMaxC-tMinC)/2
	switch {
	case baseC >= tMaxC:
		return 0
	case baseC <= tMinC:
		return mean - baseC
	}
	crossing := math.Asin((baseC - mean) / half)
	return ((mean-baseC)*(math.Pi/2-crossing) + half*math.Cos(crossing)) / math.Pi
}

// DegreeDaysSineUpper is DegreeDaysSine with a horizontal upper limit: heat
// above the limit counts as if at the limit.
//
// Check: 38 and 100 F over 40 F up to 90 F: 27.4194 F d.
// Source: Baskerville & Emin 1969 for the wave; the horizontal cut-off in Roltsch
// et al. 1999, Int. J. Biometeorology 42:169-176.
func DegreeDaysSineUpper(tMinC, tMaxC, baseC, upperC float64) float64 {
	return DegreeDaysSine(tMinC, tMaxC, baseC) - DegreeDaysSine(tMinC, tMaxC, upperC)
}

// DegreeDaysTriangle is DegreeDaysSineUpper with straight lines in place of the
// sine wave.
//
// Source: the single triangle method of Lindsey & Newman 1956, Ecology
// 37:812-823, with the horizontal cut-off of Roltsch et al. 1999.
func DegreeDaysTriangle(tMinC, tMaxC, baseC, upperC float64) float64 {
	return triangle(tMinC, tMaxC, baseC) - triangle(tMinC, tMaxC, upperC)
}

func triangle(tMinC, tMaxC, baseC float64) float64 {
	switch {
	case baseC >= tMaxC:
		return 0
	case baseC <= tMinC:
		return (tMinC+tMaxC)/2 - baseC
	}
	return (tMaxC - baseC) * (tMaxC - baseC) / (2 * (tMaxC - tMinC))
}
