package station

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// ArchiveColumns are the columns of an archive table that are read, as the open
// schema names them.
var ArchiveColumns = []string{"dateTime", "usUnits", "interval", "outTemp", "outHumidity", "rain", "windSpeed", "radiation"}

// ArchiveRow is a row of an archive table: the interval's end in seconds since
// 1970 UTC, the system of its units, its length in minutes, and what was measured
// in that system; NaN where it was not.
type ArchiveRow struct {
	Row                                         int
	At, Units, Minutes                          float64
	TempC, HumidityPct, Rain, Wind, RadiationWM float64
}

// The systems of units of an archive table: US (F, inches, miles an hour), metric
// with rain in centimetres and wind in km/h, and metric with mm and m/s.
const (
	unitsUS       = 1
	unitsMetric   = 16
	unitsMetricWX = 17
)

const (
	inchMM = 25.4
	mileMS = 0.44704
	kmhMS  = 1 / 3.6
)

// ArchiveSums sums the rows of an archive table to hours and days.
type ArchiveSums struct {
	found  *Found
	name   string
	windM  float64
	days   *daySums
	hours  *hourSums
	filter *spikeFilter
	before int64
	units  map[float64]bool
}

// NewArchiveSums begins to sum the rows of a file's archive table.
func NewArchiveSums(f Format, name string, o Options) *ArchiveSums {
	a := &ArchiveSums{found: &Found{Format: f}, name: name, windM: o.WindHeightM, days: newDaySums(o.Clock), hours: newHourSums(o.Clock), before: math.MinInt64, units: map[float64]bool{}}
	a.filter = &spikeFilter{pass: func(r *Reading) { a.days.add(r); a.hours.add(r) }, report: &a.found.Report, name: name, column: "outTemp"}
	return a
}

func (a *ArchiveSums) refuse(row int, column, key string, args words.Args) {
	a.found.Refused = append(a.found.Refused, fault.New(fault.Invalid, key, args).In(fault.Place{File: a.name, Row: row, Column: column}))
}

// Add takes a row; rows come in order of time.
func (a *ArchiveSums) Add(r *ArchiveRow) {
	a.found.Rows++
	at := int64(r.At)
	switch {
	case math.IsNaN(r.At) || r.At != math.Trunc(r.At) || r.At < float64(minEpoch) || r.At > float64(maxEpoch):
		a.refuse(r.Row, "dateTime", "station.archive_time", words.Args{"given": told(r.At)})
		return
	case r.Units != unitsUS && r.Units != unitsMetric && r.Units != unitsMetricWX:
		a.refuse(r.Row, "usUnits", "station.archive_units", words.Args{"given": told(r.Units)})
		return
	case !(r.Minutes > 0 && r.Minutes <= 24*60):
		a.refuse(r.Row, "interval", "station.archive_interval", words.Args{"given": told(r.Minutes)})
		return
	case at == a.before:
		a.refuse(r.Row, "dateTime", "station.archive_twice", words.Args{"given": told(r.At)})
		return
	case at < a.before:
		a.refuse(r.Row, "dateTime", "station.archive_order", words.Args{"given": told(r.At)})
		return
	}
	a.before = at
	a.units[r.Units] = true
	a.found.Kept++
	a.filter.add(a.reading(r))
}

// The moments an archive can tell of: 1970 to 2200.
const (
	minEpoch = 1
	maxEpoch = 7_258_118_400
)

func told(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// reading brings a row to our units; what cannot be is left out.
func (a *ArchiveSums) reading(r *ArchiveRow) Reading {
	out := nothing(int64(r.At), int64(math.Round(r.Minutes*60)), r.Row)
	temp, rain, wind := r.TempC, r.Rain, r.Wind
	switch r.Units {
	case unitsUS:
		temp, rain, wind = celsius(temp), rain*inchMM, wind*mileMS
	case unitsMetric:
		rain, wind = rain*10, wind*kmhMS
	}
	out.TempC = a.limited(r.Row, "outTemp", temp, climate.LeastC, climate.MostC)
	out.HumidityPct = a.limited(r.Row, "outHumidity", r.HumidityPct, 0, 100)
	out.RainMM = a.limited(r.Row, "rain", rain, 0, 400*max(1, r.Minutes/60))
	out.WindMS = a.limited(r.Row, "windSpeed", wind, 0, 60)
	out.RadiationWM2 = a.limited(r.Row, "radiation", r.RadiationWM, 0, 1800)
	if a.windM > 0 && a.windM != 2 {
		out.WindMS = climate.WindAt2M(out.WindMS, a.windM)
	}
	return out
}

func celsius(f float64) float64 { return (f - 32) / 1.8 }

func (a *ArchiveSums) limited(row int, column string, v, low, high float64) float64 {
	if v < low || v > high {
		a.refuse(row, column, "station.value_impossible", words.Args{"given": rounded(v), "low": low, "high": high})
		return math.NaN()
	}
	return v
}

// Found is the days, judged.
func (a *ArchiveSums) Found() (*Found, error) {
	a.finish()
	return a.found, a.found.judge(a.name)
}

// finish makes days of what was summed.
func (a *ArchiveSums) finish() {
	a.filter.flush()
	a.found.Days, a.found.Hours = a.days.record(&a.found.Report, a.name, "outTemp"), a.hours.hours()
	if len(a.units) > 1 {
		a.found.Warnings = append(a.found.Warnings, fault.New(fault.Invalid, "station.archive_mixed", nil).In(fault.Place{File: a.name, Column: "usUnits"}))
	}
}

// readArchive reads the archive table of a home weather station, exported as CSV:
// a row an interval, under the headings of the open schema. The rows are summed to
// days by the site's clock; the extremes are those of the intervals' means.
//
// Format: the common open schema of such archives, from memory.
func readArchive(r io.Reader, name string, o Options, found *Found) error {
	in := newRows(r, name)
	header, err := in.next()
	if errors.Is(err, io.EOF) {
		return fault.New(fault.Invalid, "table.empty", nil).In(fault.Place{File: name})
	}
	if err != nil {
		return err
	}
	places := make([]int, len(ArchiveColumns))
	for k, want := range ArchiveColumns {
		places[k] = -1
		for i, h := range header {
			if strings.EqualFold(strings.TrimSpace(h), want) {
				places[k] = i
			}
		}
	}
	for k, place := range places[:4] {
		if place < 0 {
			return fault.New(fault.Invalid, "station.column_missing", words.Args{"column": ArchiveColumns[k]}).
				In(fault.Place{File: name, Row: 1, Column: ArchiveColumns[k]})
		}
	}
	a := NewArchiveSums(Archive, name, o)
	err = in.each(func(row []string) {
		if v, ok := a.numbers(row, places, in.row); ok {
			a.Add(&ArchiveRow{in.row, v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7]})
		}
	})
	if err != nil {
		return err
	}
	a.finish()
	*found = *a.found
	return nil
}

// numbers reads the cells of a row; a blank one, NULL or None is not known.
func (a *ArchiveSums) numbers(row []string, places []int, number int) (v [8]float64, ok bool) {
	for k, place := range places {
		v[k] = math.NaN()
		cell := cellOf(row, place)
		if cell == "" || strings.EqualFold(cell, "null") || strings.EqualFold(cell, "none") {
			continue
		}
		n, err := strconv.ParseFloat(cell, 64)
		if err != nil || math.IsInf(n, 0) {
			a.refuse(number, ArchiveColumns[k], "station.not_a_number", words.Args{"given": cell})
			if k < 3 {
				a.found.Rows++
				return v, false
			}
			continue
		}
		v[k] = n
	}
	return v, true
}

// NotANumber tells that a cell of a row is no number.
func (a *ArchiveSums) NotANumber(row int, column string, given any) {
	a.refuse(row, column, "station.not_a_number", words.Args{"given": fmt.Sprint(given)})
}
