package sun

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// Location is a place on the globe.
type Location struct {
	LatitudeDeg  float64 // degrees, south negative, -66 to 66 in this tool
	LongitudeDeg float64 // degrees, west negative
	ElevationM   float64 // metres above the sea
}

// The places the models are meant for. Beyond the polar circles gardens follow
// no rule of ours; the highest farmed land lies under 5,000 m and the lowest
// shore, the Dead Sea's, at -430 m. // judgement
const (
	latitudeLimitDeg  = 66.0
	longitudeLimitDeg = 180.0
	elevationLowM     = -430.0
	elevationHighM    = 5000.0
)

// Check returns every fault of the location; none when it is sound.
func (l Location) Check() fault.List {
	var faults fault.List
	faults = within(faults, "sun.latitude_out_of_range", l.LatitudeDeg, -latitudeLimitDeg, latitudeLimitDeg)
	faults = within(faults, "sun.longitude_out_of_range", l.LongitudeDeg, -longitudeLimitDeg, longitudeLimitDeg)
	return within(faults, "sun.elevation_out_of_range", l.ElevationM, elevationLowM, elevationHighM)
}

func within(faults fault.List, key string, given, low, high float64) fault.List {
	if given >= low && given <= high { // false for a value that is no number
		return faults
	}
	args := words.Args{"given": given, "low": low, "high": high}
	return append(faults, fault.New(fault.OutOfRange, key, args))
}
