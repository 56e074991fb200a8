package observed

import (
	"garner/internal/cal"
	"garner/internal/climate"
)

// When a reading was taken, which decides the days it tells of.
const (
	Morning = "morning"
	Evening = "evening"
)

// Who told a reading.
const (
	ByHand     = "hand"
	Instrument = "instrument" // its days are whole days, from midnight to midnight
)

// Reading is one look at a rain gauge or a thermometer, or a day of an
// instrument that sends by itself.
type Reading struct {
	ID    string
	Site  string
	Bed   string   // under whose cover it was read; empty: in the open
	Date  cal.Date // the day it was read, of an instrument the day it tells of
	At    string   // Morning or Evening
	Since cal.Date // the day it was last emptied or set; None: at the reading before
	By    string   // ByHand or Instrument
	Note  string

	RainMM, TMinC, TMaxC climate.Maybe // [mm] [C] [C]
	HumidityPct          climate.Maybe // mean [%]
	RadiationMJ          climate.Maybe // [MJ/m2] in the day
	WindMS               climate.Maybe // mean at 2 m [m/s]
}

// days are the first and last whole day that a sum or a maximum tells of, given
// the reading of the same quantity before it (nil: none).
func (r *Reading) days(before *Reading) (first, last cal.Date) {
	last = r.wholeDay(r.Date)
	if r.By == Instrument {
		return last, last
	}
	since := r.Since
	at := r.At
	switch {
	case since.IsSet():
	case before != nil:
		since, at = before.Date, before.At
		if before.By == Instrument {
			return before.Date + 1, max(before.Date+1, last)
		}
	default:
		return last, last
	}
	first = since + 1
	if at == Morning {
		first = since // what fell later on that day is in it
	}
	return min(first, last), last
}

// wholeDay is the last day that was over, or as good as, when it was read.
func (r *Reading) wholeDay(on cal.Date) cal.Date {
	if r.By != Instrument && r.At == Morning {
		return on - 1
	}
	return on
}

// nights are the first and last day whose minimum a reading tells: the night
// before a morning is that day's own.
func (r *Reading) nights(before *Reading) (first, last cal.Date) {
	last = r.Date
	if r.By == Instrument {
		return last, last
	}
	switch {
	case r.Since.IsSet():
		first = r.Since + 1
	case before != nil:
		first = before.Date + 1
	default:
		first = last
	}
	return min(first, last), last
}
