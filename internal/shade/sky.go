package shade

import (
	"math"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/sun"
)

// Tenths is the number of tenths of a month in a year.
const Tenths = 36

const degree = math.Pi / 180 // radians

// ray is a direction from the ground into the sky: a unit vector on the plan and
// the tangent of the height above the horizon.
type ray struct{ x, y, tan float64 }

// step is where the sun stands for a while, and the beam it sends.
type step struct {
	ray
	weight float64
}

// stepMinutes is how far apart the sun's places are.
const stepMinutes = 15

// meanYear has the sun about where it stands in the mean of the four years of
// the calendar.
const meanYear = 2002

// TenthDay is the day of the common year in the middle of a tenth, 0-35.
func TenthDay(tenth int) float64 {
	month, third := tenth/3+1, tenth%3
	first := float64(cal.MonthDay{Month: month, Day: 1}.DayOfYear() - 1)
	if third == 2 {
		return first + 20 + float64(cal.DaysInMonth(month)-20+1)/2
	}
	return first + float64(10*third) + 5.5
}

// daysOf are the sun's ways across the sky over a site, by tenth.
func daysOf(site *place.Site) (days [Tenths][]step) {
	for t := range days {
		days[t] = dayOf(site, int(TenthDay(t)))
	}
	return days
}

// dayOf is the sun's way on one day, from midnight to midnight by the sun.
func dayOf(site *place.Site, dayOfYear int) []step {
	midnight := int64(cal.MonthDayOf(dayOfYear).In(meanYear))*86400 - int64(site.Location.LongitudeDeg*240)
	var out []step
	for minute := stepMinutes / 2.0; minute < 24*60; minute += stepMinutes {
		p := sun.PositionAt(site.Location, midnight+int64(minute*60))
		if p.ElevationDeg > 0 {
			out = append(out, step{rayTo(site.UpDeg, p.AzimuthDeg, p.ElevationDeg), ClearBeam(p.ElevationDeg)})
		}
	}
	return out
}

// rayTo is the direction on a plan whose top lies towards a bearing.
func rayTo(upDeg, azimuthDeg, elevationDeg float64) ray {
	sin, cos := math.Sincos((azimuthDeg - upDeg) * degree)
	return ray{sin, cos, math.Tan(elevationDeg * degree)}
}

// ClearBeam is the beam of a clear sky on level ground, as a share of the beam
// above the air, with the sun at a height above the horizon [degrees]: nothing
// when it is down.
//
// Only its course through the day is used. Source: Meinel & Meinel 1976,
// 0.7^(AM^0.678), with the air mass of Kasten & Young 1989. // memory
func ClearBeam(elevationDeg float64) float64 {
	if elevationDeg <= 0 {
		return 0
	}
	sin := math.Sin(elevationDeg * degree)
	airMass := 1 / (sin + 0.50572*math.Pow(elevationDeg+6.07995, -1.6364))
	return sin * math.Pow(0.7, math.Pow(airMass, 0.678))
}
