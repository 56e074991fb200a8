package climate

import (
	"math"

	"garner/internal/cal"
)

// Hour is one hour of weather as a station recorded it. A value that was not
// measured is NaN, which no comparison holds for.
type Hour struct {
	Date        cal.Date // the record's own date, in whichever zone it is kept
	Hour        int      // 0-23, as the record has it
	TempC       float64  // air [C]
	HumidityPct float64  // relative humidity [%]
	RainMM      float64  // rain of the hour [mm]
	WindMS      float64  // mean wind [m/s]
	Row         int      // row of the file it was read from, header = 1; 0 when not from a file
}

// At is the hour counted from 1970-01-01 00:00 of the record's own clock.
func (h *Hour) At() int { return int(h.Date)*24 + h.Hour }

// DewC is the dew point of the air [C], NaN where temperature or humidity is
// not known.
//
// Source: saturation pressure of FAO-56 eq. 11 turned round.
func (h *Hour) DewC() float64 {
	pressure := SaturationKPa(h.TempC) * h.HumidityPct / 100
	x := math.Log(pressure / 0.6108)
	return 237.3 * x / (17.27 - x)
}
