package station

import (
	"errors"
	"io"
	"math"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// epwField is a column of EPW data rows, the value that stands for missing, and
// what the row's reading makes of it.
type epwField struct {
	at        int
	name      string
	missing   float64
	low, high float64
	set       func(*Reading, float64)
}

// epwFields are the columns that are read. Radiation is the sum of the hour before
// [Wh/m2], which over an hour is its mean [W/m2].
var epwFields = []epwField{
	{6, "dry bulb", 99.9, climate.LeastC, climate.MostC, func(r *Reading, v float64) { r.TempC = v }},
	{7, "dew point", 99.9, climate.LeastC, climate.MostC, func(r *Reading, v float64) { r.DewC = v }},
	{8, "relative humidity", 999, 0, 110, func(r *Reading, v float64) { r.HumidityPct = min(v, 100) }},
	{13, "global radiation", 9999, 0, 1500, func(r *Reading, v float64) { r.RadiationWM2 = v }},
	{21, "wind speed", 999, 0, 60, func(r *Reading, v float64) { r.WindMS = v }},
	{33, "rain", 999, 0, 400, func(r *Reading, v float64) { r.RainMM = v }},
}

const (
	epwColumns = 22   // up to the wind; what stands after it may be left out
	epwWindM   = 10   // height of the cups of such files [m] (memory)
	epwYear    = 2000 // every row's: typical months come from different years
)

// epwReading is an EPW file while it is read.
type epwReading struct {
	found   *Found
	rows    *csvRows
	windM   float64
	perHour int64
	days    *daySums
	seen    map[int64]int // rows by the end of their interval
	rained  bool
}

// readEPW reads the hours of a typical year and makes monthly normals of them.
// Eight header lines, LOCATION first, the last of them DATA PERIODS; then year,
// month, day, hour 1-24 (ending, local standard time), minute, flags and the
// values. The years are stitched from different ones and are passed over.
//
// Format: EnergyPlus "Auxiliary Programs", chapter "EnergyPlus weather file (EPW)
// data dictionary" (US Department of Energy); the marks of missing values are from
// memory.
func readEPW(r io.Reader, name string, o Options, found *Found) error {
	e := &epwReading{found: found, rows: newRows(r, name), windM: o.WindHeightM, perHour: 1, days: newDaySums(nil), seen: map[int64]int{}}
	if e.windM == 0 {
		e.windM = epwWindM
	}
	if err := e.header(); err != nil {
		return err
	}
	err := e.rows.each(func(row []string) {
		if len(row) > 1 || cellOf(row, 0) != "" {
			found.Rows++
			e.row(row)
		}
	})
	if err != nil {
		return err
	}
	return e.normals(name)
}

// header reads the lines down to DATA PERIODS.
func (e *epwReading) header() error {
	for {
		row, err := e.rows.next()
		if errors.Is(err, io.EOF) {
			return fault.New(fault.Invalid, "station.epw_header", nil).In(fault.Place{File: e.rows.name})
		}
		if err != nil {
			return err
		}
		switch strings.ToUpper(cellOf(row, 0)) {
		case "LOCATION":
			e.location(row)
		case "DATA PERIODS":
			if n, err := strconv.Atoi(cellOf(row, 2)); err == nil && n >= 1 && n <= 60 {
				e.perHour = int64(n)
			}
			return nil
		}
	}
}

// location takes city, WMO number, latitude, longitude and elevation.
func (e *epwReading) location(row []string) {
	s := &e.found.Station
	for _, at := range []int{1, 3} {
		if name := cellOf(row, at); name != "" && name != "-" && !strings.EqualFold(name, "unknown") {
			s.Name = strings.TrimPrefix(s.Name+", "+name, ", ")
		}
	}
	if id := cellOf(row, 5); id != "-" && !strings.EqualFold(id, "unknown") {
		s.ID = id
	}
	s.LatitudeDeg = within(cellOf(row, 6), -90, 90)
	s.LongitudeDeg = within(cellOf(row, 7), -180, 180)
	s.ElevationM = within(cellOf(row, 9), -1000, 9999.9)
}

func (e *epwReading) refuse(column, key string, args words.Args) {
	e.found.Refused = append(e.found.Refused, fault.New(fault.Invalid, key, args).In(e.rows.at(column)))
}

// row reads one row of data.
func (e *epwReading) row(row []string) {
	if len(row) < epwColumns {
		e.refuse("", "station.epw_row", words.Args{"n": len(row), "want": epwColumns})
		return
	}
	end, ok := e.end(row)
	if !ok {
		e.refuse("hour", "station.epw_time", words.Args{"given": strings.Join(row[:5], " ")})
		return
	}
	if before := e.seen[end]; before > 0 {
		e.refuse("hour", "station.hour_twice", words.Args{"given": strings.Join(row[:5], " "), "row": before})
		return
	}
	e.seen[end] = e.rows.row
	r := nothing(end, 3600/e.perHour, e.rows.row)
	for k := range epwFields {
		e.take(&r, &epwFields[k], cellOf(row, epwFields[k].at))
	}
	r.WindMS = climate.WindAt2M(r.WindMS, e.windM)
	e.rained = e.rained || r.RainMM > 0
	e.days.add(&r)
	e.found.Kept++
}

// end is the moment at which a row's interval ends, in a year of its own.
func (e *epwReading) end(row []string) (int64, bool) {
	var v [4]int
	for k := range v {
		n, err := strconv.Atoi(cellOf(row, k+1))
		if err != nil {
			return 0, false
		}
		v[k] = n
	}
	month, day, hour, minute := v[0], v[1], v[2], v[3]
	if month < 1 || month > 12 || day < 1 || day > monthLength(epwYear, month) || hour < 1 || hour > 24 || minute < 0 || minute > 60 {
		return 0, false
	}
	end := int64(cal.Of(epwYear, month, day))*daySeconds + int64(hour)*3600
	if e.perHour > 1 && minute > 0 {
		end += int64(minute-60) * 60
	}
	return end, true
}

// take reads one value; what is missing stays unknown.
func (e *epwReading) take(r *Reading, f *epwField, cell string) {
	if cell == "" {
		return
	}
	v, err := strconv.ParseFloat(cell, 64)
	switch {
	case err != nil || math.IsNaN(v):
		e.refuse(f.name, "station.not_a_number", words.Args{"given": cell})
	case v == f.missing:
	case v < f.low || v > f.high:
		e.refuse(f.name, "station.value_impossible", words.Args{"given": v, "low": f.low, "high": f.high})
	default:
		f.set(r, v)
	}
}

// normals makes the twelve months of the days.
func (e *epwReading) normals(name string) error {
	days := e.days.record(&e.found.Report, name, "dry bulb")
	var told [12]bool
	for _, o := range days.Days {
		told[o.Date.Month()-1] = told[o.Date.Month()-1] || o.TMinC.Known
	}
	var missing fault.List
	for m, ok := range told {
		if !ok {
			missing = append(missing, fault.New(fault.Invalid, "station.epw_month", words.Args{"month": m + 1}).In(fault.Place{File: name}))
		}
	}
	if len(missing) > 0 {
		return missing
	}
	n, err := climate.NormalsOf(days)
	if err != nil {
		return err
	}
	for m := range n {
		n[m].TMinC, n[m].TMaxC, n[m].RainMM = rounded(n[m].TMinC), rounded(n[m].TMaxC), rounded(n[m].RainMM)
		for _, v := range []*climate.Maybe{&n[m].RadiationMJ, &n[m].HumidityPct, &n[m].WindMS} {
			*v = roundedMaybe(*v)
		}
	}
	e.found.Typical, e.found.NoRain = &n, !e.rained
	return nil
}
