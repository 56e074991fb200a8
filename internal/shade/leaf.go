package shade

import (
	"garner/internal/cal"
	"garner/internal/place"
)

// Days on which a tree that drops its leaves is half in leaf and half bare at
// 52 degrees north. Phenology networks give leaf-out from mid April to mid May
// and leaf-fall from mid October to late November; these are their middles.
// // memory
var (
	usualLeafOn  = cal.MonthDay{Month: 4, Day: 30}
	usualLeafOff = cal.MonthDay{Month: 11, Day: 5}
)

// leafRampD is how long leaves take to come or to fall [d]: three to four weeks.
// // memory: phenology networks
const leafRampD = 28

const commonYear = 365

// leafDays are the days of the common year about which a feature's leaves come
// and fall.
type leafDays struct{ on, off int }

// leafDaysOf takes what is told of a feature, else what is usual, which comes
// half a year later in the south.
func leafDaysOf(f *place.Feature, northern bool) leafDays {
	on, off := usualLeafOn.DayOfYear(), usualLeafOff.DayOfYear()
	if !northern {
		on, off = (on+commonYear/2)%commonYear+1, (off+commonYear/2)%commonYear+1
	}
	if f.LeafOn.Month != 0 {
		on = f.LeafOn.DayOfYear()
	}
	if f.LeafOff.Month != 0 {
		off = f.LeafOff.DayOfYear()
	}
	return leafDays{on, off}
}

// share returns how much of the leaf is out on a day of the common year, 0-1:
// half on both days, on straight lines of leafRampD.
func (l leafDays) share(day float64) float64 {
	season := float64((l.off - l.on + commonYear) % commonYear)
	since := day - float64(l.on)
	for since < -leafRampD/2 {
		since += commonYear
	}
	for since >= commonYear-leafRampD/2 {
		since -= commonYear
	}
	return ramp(since) * ramp(season-since)
}

// ramp is 0 half a ramp before a day, 1 half a ramp after it.
func ramp(days float64) float64 { return max(0, min(1, days/leafRampD+0.5)) }
