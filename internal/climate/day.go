package climate

import "garner/internal/cal"

// Day is one day of weather in the open, nothing missing.
type Day struct {
	TMinC       float64 // night minimum of the air at screen height [C]
	TMaxC       float64 // day maximum [C], at least TMinC
	RainMM      float64 // rain [mm]
	RadiationMJ float64 // global radiation on the flat [MJ/m2/day]
	HumidityPct float64 // mean relative humidity [%]
	WindMS      float64 // mean wind at 2 m [m/s]
}

// MeanC is the day's mean temperature, half-way between the extremes [C].
func (d Day) MeanC() float64 { return (d.TMinC + d.TMaxC) / 2 }

// Series is an unbroken run of days.
type Series struct {
	First cal.Date
	Days  []Day
}

// Last returns the date of the last day.
func (s Series) Last() cal.Date { return s.First + cal.Date(len(s.Days)) - 1 }

// Observation is one day as a station recorded it: a field may be missing.
type Observation struct {
	Date                      cal.Date
	TMinC, TMaxC, RainMM      Maybe
	SunH, RadiationMJ         Maybe
	HumidityPct, DewC, WindMS Maybe
	Row                       int // row of the file it was read from, header = 1; 0 when not from a file
}

// Maybe is a value that may be missing.
type Maybe struct {
	Value float64
	Known bool
}

// Is makes a known value.
func Is(v float64) Maybe { return Maybe{v, true} }

// Record is a station's daily record in order of date; days may be missing.
type Record struct {
	ID   string
	Days []Observation
}

// MonthNormal is the long-term mean of one month.
type MonthNormal struct {
	TMinC, TMaxC float64 // mean daily extremes [C]
	RainMM       float64 // monthly sum [mm]
	SunH         Maybe   // bright sunshine, hours a day
	RadiationMJ  Maybe   // global radiation [MJ/m2/day]
	HumidityPct  Maybe
	WindMS       Maybe
}

// Normals are the twelve months, January first, in either hemisphere.
type Normals [12]MonthNormal
