package desk

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/risk"
)

// hourDays is how many days count by their hours alone.
func hourDays(hours []climate.Hour) int {
	if len(hours) == 0 {
		return 0
	}
	return risk.CountedDays(hours, hours[0].Date, hours[len(hours)-1].Date+cal.Date(1))
}

// renewedHours lays new hours over those that stand: within the period of the new
// ones only they count.
func renewedHours(stood, hours []climate.Hour) []climate.Hour {
	if len(stood) == 0 || len(hours) == 0 {
		return slices.Concat(stood, hours)
	}
	first, last := hours[0].At(), hours[len(hours)-1].At()
	var out, after []climate.Hour
	for _, h := range stood {
		switch at := h.At(); {
		case at < first:
			out = append(out, h)
		case at > last:
			after = append(after, h)
		}
	}
	return slices.Concat(out, hours, after)
}

// sameHours tells whether two lists of hours say the same, wherever they were read.
func sameHours(a, b []climate.Hour) bool {
	return slices.EqualFunc(a, b, func(x, y climate.Hour) bool {
		return x.At() == y.At() && sameFigure(x.TempC, y.TempC) && sameFigure(x.HumidityPct, y.HumidityPct) &&
			sameFigure(x.RainMM, y.RainMM) && sameFigure(x.WindMS, y.WindMS)
	})
}

// sameFigure tells whether two figures are the same, or both not known.
func sameFigure(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
