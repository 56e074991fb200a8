package station

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// Reading is what an instrument wrote at the end of an interval. What it did not
// measure is NaN.
type Reading struct {
	At           int64   // the interval's end, seconds since 1970-01-01 UTC
	Seconds      int64   // its length [s]
	TempC        float64 // mean air temperature [C]
	HumidityPct  float64 // relative humidity [%]
	DewC         float64 // dew point [C]
	RainMM       float64 // rain of the interval [mm]
	WindMS       float64 // mean wind at 2 m [m/s]
	RadiationWM2 float64 // mean global radiation [W/m2]
	Row          int     // of the file
}

// nothing is a reading of which nothing is known.
func nothing(at, seconds int64, row int) Reading {
	unknown := math.NaN()
	return Reading{At: at, Seconds: seconds, Row: row, TempC: unknown, HumidityPct: unknown, DewC: unknown,
		RainMM: unknown, WindMS: unknown, RadiationWM2: unknown}
}

// enoughOfDay is the share of a day that must be covered for its extremes and sums
// to stand for it: 22 of 24 hours, as with the rules for diseases.
const enoughOfDay = 22.0 / 24

const daySeconds = 86400

// daySums sums readings to days by a site's clock, in whichever order they come.
type daySums struct {
	clock Clock
	days  map[cal.Date]*daySum
}

// daySum is one day so far; a quantity is weighted by the time it was measured.
type daySum struct {
	row                               int
	low, high                         float64
	temp, humid, dew, rain, wind, sky weighted
}

// weighted is a sum over time.
type weighted struct{ sum, seconds float64 }

func (w *weighted) add(v float64, seconds int64) {
	if !math.IsNaN(v) {
		w.sum += v * float64(seconds)
		w.seconds += float64(seconds)
	}
}

// enough tells whether a quantity was measured for long enough of a day.
func (w weighted) enough(length int64) bool { return w.seconds >= enoughOfDay*float64(length) }

// mean is the mean over the time it was measured.
func (w weighted) mean(length int64) climate.Maybe {
	if !w.enough(length) {
		return climate.Maybe{}
	}
	return climate.Is(w.sum / w.seconds)
}

func newDaySums(clock Clock) *daySums {
	if clock == nil {
		clock = func(int64) int64 { return 0 }
	}
	return &daySums{clock: clock, days: map[cal.Date]*daySum{}}
}

// dateAt is the date at a moment.
func (s *daySums) dateAt(at int64) cal.Date {
	return cal.Date(floorDiv(int(at+s.clock(at)), daySeconds))
}

// add takes a reading to the day in which the middle of its interval lies.
func (s *daySums) add(r *Reading) {
	date := s.dateAt(r.At - r.Seconds/2)
	day := s.days[date]
	if day == nil {
		day = &daySum{row: r.Row, low: math.Inf(1), high: math.Inf(-1)}
		s.days[date] = day
	}
	if !math.IsNaN(r.TempC) {
		day.low, day.high = min(day.low, r.TempC), max(day.high, r.TempC)
	}
	day.temp.add(r.TempC, r.Seconds)
	day.humid.add(r.HumidityPct, r.Seconds)
	day.dew.add(r.DewC, r.Seconds)
	day.wind.add(r.WindMS, r.Seconds)
	day.sky.add(r.RadiationWM2, r.Seconds)
	if !math.IsNaN(r.RainMM) { // a sum already, not a rate
		day.rain.sum += r.RainMM
		day.rain.seconds += float64(r.Seconds)
	}
}

// starts is the moment at which a day begins by the clock.
func (s *daySums) starts(date cal.Date) int64 {
	midnight := int64(date) * daySeconds
	at := midnight - s.clock(midnight)
	return midnight - s.clock(at)
}

// length is the length of a day [s]: an hour less or more where clocks change.
func (s *daySums) length(date cal.Date) int64 { return s.starts(date+1) - s.starts(date) }

// record is the days of which enough is known, in their order, and how many were
// left out as begun only.
func (s *daySums) record(report *Report, name, column string) *climate.Record {
	book := newDayBook(report)
	parts := 0
	for date, day := range s.days {
		length := s.length(date)
		if !day.temp.enough(length) && !day.rain.enough(length) {
			parts++
			continue
		}
		book.days[date] = day.observation(date, length)
	}
	if parts > 0 {
		report.Warnings = append(report.Warnings, fault.New(fault.Invalid, "station.part_days", words.Args{"n": parts}).
			In(fault.Place{File: name}))
	}
	return book.record(name, name, column)
}

// observation is the day as a station would have recorded it.
func (d *daySum) observation(date cal.Date, length int64) *climate.Observation {
	o := &climate.Observation{Date: date, Row: d.row}
	if d.temp.enough(length) {
		o.TMinC, o.TMaxC = climate.Is(rounded(d.low)), climate.Is(rounded(d.high))
	}
	if d.rain.enough(length) {
		o.RainMM = climate.Is(rounded(d.rain.sum))
	}
	o.HumidityPct, o.WindMS = roundedMaybe(d.humid.mean(length)), roundedMaybe(d.wind.mean(length))
	if dew := d.dew.mean(length); !o.HumidityPct.Known && dew.Known && o.TMaxC.Known {
		o.DewC = climate.Is(rounded(min(dew.Value, o.TMaxC.Value)))
	}
	if sky := d.sky.mean(length); sky.Known {
		o.RadiationMJ = climate.Is(rounded(sky.Value * float64(length) / 1e6))
	}
	return o
}

// rounded keeps three decimals: more than any instrument tells, and few enough
// for a file that people read.
func rounded(v float64) float64 { return math.Round(v*1000) / 1000 }

func roundedMaybe(m climate.Maybe) climate.Maybe {
	m.Value = rounded(m.Value)
	return m
}
