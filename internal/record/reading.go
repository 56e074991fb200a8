package record

import "garner/internal/cal"

// ReadWay is how the moisture of a soil was read. The list is closed and documented.
type ReadWay string

// The ways.
const (
	Probe       ReadWay = "probe"       // per cent of the volume
	Tensiometer ReadWay = "tensiometer" // centibars, which are kPa
	Finger      ReadWay = "finger"
)

// Reading is what was read of a bed's moisture, in the morning of a day, before
// that day's water.
type Reading struct {
	ID    string
	Date  cal.Date
	Bed   string
	Way   ReadWay
	Value float64 // of a probe or tensiometer
	Felt  string  // of a finger: dry, moist, wet
	Sure  string  // well, fair, hardly; empty: fair
	Note  string
}
