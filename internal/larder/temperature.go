package larder

import (
	"math"

	"garner/internal/cal"
)

// Frozen is the method of a freezer.
const Frozen = "frozen"

// FreezerC is the temperature of a household freezer [C], the 0 F that
// USDA/FSIS FoodKeeper keeps to for its frozen lives.
const FreezerC = -18

const (
	daysInYear  = 365.25
	daysInMonth = daysInYear / 12
	coldestDay  = 15.5 // middle of the coldest month, in days after its first day began
)

// TemperatureC returns the mean temperature inside the store on a day [C].
//
// It is a cosine over the year, coldest in the middle of January in the north
// and of July in the south, so drawn that the means of the coldest and the
// warmest month are WinterC and SummerC. A freezer stands at FreezerC all year.
// Judgement: a shed or cellar follows the smoothed year, not the day's weather.
func (s *Store) TemperatureC(day cal.Date, northern bool) float64 {
	if s.Method == Frozen {
		return FreezerC
	}
	month := 1
	if !northern {
		month = 7
	}
	since := float64(day-cal.Of(day.Year(), month, 1)) + 0.5 - coldestDay
	mean := (s.WinterC + s.SummerC) / 2
	// The mean of cos over a month round its top is sin(h)/h, h half a month.
	h := math.Pi * daysInMonth / daysInYear
	swing := (s.SummerC - s.WinterC) / 2 * h / math.Sin(h)
	return mean - swing*math.Cos(2*math.Pi*since/daysInYear)
}
