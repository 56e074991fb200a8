package station

import (
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// MostBytes is the size of the largest file that is read: some 2,000 station
// years of every column.
const MostBytes = 100_000_000

// The columns of both kinds of file.
const (
	columnDate      = "date"
	columnMonth     = "month"
	columnTMin      = "tmin_c"
	columnTMax      = "tmax_c"
	columnRain      = "rain_mm"
	columnSun       = "sun_h"
	columnRadiation = "rad_mj_m2"
	columnHumidity  = "rh_pct"
	columnDew       = "dew_c"

	columnHumidityMost  = "rh_max_pct"
	columnHumidityLeast = "rh_min_pct"
	columnWind          = "wind_ms"
)

// column is a column of values with the least and the most that can be.
type column struct {
	name      string
	low, high float64
	required  bool
}

// The limits are beyond what was ever measured on farmed land. Radiation: the
// most above the air anywhere from 66 S to 66 N is 45 MJ/m2/day (FAO-56 eq. 21).
// Rain: the world's wettest day had 1,825 mm (Foc-Foc, Reunion, 1966; memory).
var (
	dailyTMin = column{columnTMin, climate.LeastC, climate.MostC, true}
	dailyTMax = column{columnTMax, climate.LeastC, climate.MostC, true}
	radiation = column{columnRadiation, 0, 45, false}
	sunshine  = column{columnSun, 0, 24, false}
	humidity  = column{columnHumidity, 0, 100, false}
	mostDamp  = column{columnHumidityMost, 0, 100, false}
	leastDamp = column{columnHumidityLeast, 0, 100, false}
	wind      = column{columnWind, 0, 60, false}
	dew       = column{columnDew, climate.LeastC, climate.MostC, false}
	dailyRain = column{columnRain, 0, 2000, false}
	monthRain = column{columnRain, 0, 10000, true}
)

// missing are the cells that say that a value is not known.
func missing(cell string) bool { return cell == "" || cell == "NA" }

// value reads one cell of a column: missing, a value within limits, or a fault.
func (c column) value(t *table.Table, row, at int) (climate.Maybe, *fault.Error) {
	if at < 0 || missing(t.Rows[row][at]) {
		return climate.Maybe{}, nil
	}
	cell := t.Rows[row][at]
	v, ok := t.Number(cell)
	if !ok {
		return climate.Maybe{}, fault.New(fault.Invalid, "station.not_a_number", words.Args{"given": cell}).
			In(t.At(row, c.name))
	}
	if v < c.low || v > c.high {
		return climate.Maybe{}, fault.New(fault.Invalid, "station.value_impossible",
			words.Args{"given": v, "low": c.low, "high": c.high}).In(t.At(row, c.name))
	}
	return climate.Is(v), nil
}

// missingColumns returns a fault for each required column that is not there.
func missingColumns(t *table.Table, required ...string) (faults fault.List) {
	for _, name := range required {
		if t.Column(name) < 0 {
			faults = append(faults, fault.New(fault.Invalid, "station.column_missing", words.Args{"column": name}).
				In(fault.Place{File: t.Name, Row: 1, Column: name}))
		}
	}
	return faults
}

// unknownColumns returns a warning for each column that is not used.
func unknownColumns(t *table.Table, known ...string) (warnings fault.List) {
	for _, h := range t.Header {
		used := false
		for _, k := range known {
			used = used || t.Column(k) == t.Column(h)
		}
		if !used {
			warnings = append(warnings, fault.New(fault.Invalid, "station.column_unused", words.Args{"column": h}).
				In(fault.Place{File: t.Name, Row: 1, Column: h}))
		}
	}
	return warnings
}
