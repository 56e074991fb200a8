package calibrate

import (
	"bytes"
	_ "embed" // the reference climate

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/station"
	"garner/internal/sun"
)

//go:embed data/reference_climate.csv
var referenceClimate []byte

// referencePlace is where the reference climate was measured.
var referencePlace = sun.Location{LatitudeDeg: 52.10, LongitudeDeg: 5.18, ElevationM: 2}

const (
	referenceYears = 15 // of plantings
	runOutYears    = 3
	referenceSeed  = 1
)

var referenceFirst = cal.Of(2001, 1, 1)

// referenceWeather makes the weather that all fits share.
func referenceWeather() ([]climate.Day, error) {
	normals, err := station.ReadNormals(bytes.NewReader(referenceClimate), "reference_climate.csv")
	if err != nil {
		return nil, err
	}
	generator, err := climate.NewGenerator(*normals, referencePlace)
	if err != nil {
		return nil, err
	}
	last := cal.Of(2001+referenceYears+runOutYears, 1, 1)
	return generator.Days(referenceSeed, 0, 0, referenceFirst, int(last-referenceFirst)), nil
}
