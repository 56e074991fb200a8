package station

import (
	"io"
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// The columns of an hourly record.
const (
	columnTime = "time"
	columnTemp = "temp_c"
)

// hourlyColumn is a column of an hourly record and the field it fills.
type hourlyColumn struct {
	column
	field func(*climate.Hour) *float64
}

// Rain of an hour: the world's wettest had 305 mm (Holt, Missouri, 1947; memory).
var hourlyColumns = []hourlyColumn{
	{column{columnTemp, climate.LeastC, climate.MostC, true}, func(h *climate.Hour) *float64 { return &h.TempC }},
	{humidity, func(h *climate.Hour) *float64 { return &h.HumidityPct }},
	{column{columnRain, 0, 400, false}, func(h *climate.Hour) *float64 { return &h.RainMM }},
	{wind, func(h *climate.Hour) *float64 { return &h.WindMS }},
}

// ReadHourly reads an hourly record with the columns time and temp_c and, where
// known, rh_pct, rain_mm and wind_ms. A time is the hour by the record's own
// clock, 2027-07-01T14:00, with or without its zone. Rows and values that cannot
// be are left out and told in the report; so are gaps, jumps and signs of another
// unit. The error is for a file of which nothing can be used.
func ReadHourly(r io.Reader, name string) ([]climate.Hour, Report, error) {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return nil, Report{}, err
	}
	hours, _, report, err := hoursOf(t)
	return hours, report, err
}

// hoursOf reads the hours of a table, with the times of all its rows.
func hoursOf(t *table.Table) ([]climate.Hour, []stamp, Report, error) {
	if faults := missingColumns(t, columnTime, columnTemp); len(faults) > 0 {
		return nil, nil, Report{}, faults
	}
	report := Report{Rows: len(t.Rows) + len(t.Refused), Refused: append(fault.List(nil), t.Refused...)}
	names, places := []string{columnTime, columnRadiation}, []int{}
	for _, c := range hourlyColumns {
		names, places = append(names, c.name), append(places, t.Column(c.name))
	}
	report.Warnings = unknownColumns(t, names...)
	stamps := stampsOf(t, &report)
	hours := make([]climate.Hour, 0, len(stamps))
	for row, s := range stamps {
		if s.at != noHour {
			hours = append(hours, hourOf(t, row, s, places, &report))
		}
	}
	report.Kept = len(hours)
	if report.Kept == 0 {
		return nil, stamps, report, fault.New(fault.Invalid, "station.no_hours", words.Args{"rows": report.Rows}).
			In(fault.Place{File: t.Name})
	}
	report.Warnings = append(report.Warnings, jumpsOf(t, hours)...)
	report.Warnings = append(report.Warnings, gapsOf(t, hours, stamps)...)
	report.Warnings = append(report.Warnings, unitsOf(t)...)
	sortByRow(report.Refused)
	sortByRow(report.Warnings)
	return hours, stamps, report, nil
}

// hourOf reads the values of one row.
func hourOf(t *table.Table, row int, s stamp, places []int, report *Report) climate.Hour {
	date := floorDiv(int(s.at), 24)
	h := climate.Hour{Date: cal.Date(date), Hour: int(s.at) - 24*date, Row: t.Numbers[row]}
	for i, c := range hourlyColumns {
		v, f := c.value(t, row, places[i])
		if f != nil {
			report.Refused = append(report.Refused, f)
		}
		*c.field(&h) = math.NaN()
		if v.Known {
			*c.field(&h) = v.Value
		}
	}
	return h
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// jumpC is the change from one hour to the next from which the instrument is
// doubted: the steepest recorded in ordinary places is about half of it.
const jumpC = 20

// spike tells whether the temperature of hour i jumps away and back again.
func spike(hours []climate.Hour, i int) bool {
	if !jump(hours, i) || i+1 >= len(hours) {
		return false
	}
	before, now, after := hours[i-1].TempC, hours[i].TempC, hours[i+1].TempC
	return math.Abs(after-now) >= jumpC/2 && math.Abs(after-before) < jumpC/2
}

// jump tells whether the temperature of hour i is far from that of the hour before.
func jump(hours []climate.Hour, i int) bool {
	return i > 0 && hours[i].At()-hours[i-1].At() <= 1 && math.Abs(hours[i].TempC-hours[i-1].TempC) >= jumpC
}

// DropSpikes leaves out the temperature of hours that jump away and back, which are
// kept unless that is asked for; the hours are changed in place.
func DropSpikes(hours []climate.Hour) (dropped int) {
	for i := range hours {
		if spike(hours, i) {
			hours[i].TempC = math.NaN()
			dropped++
		}
	}
	return dropped
}

// jumpsOf warns of temperatures that jump, at their rows.
func jumpsOf(t *table.Table, hours []climate.Hour) (warnings fault.List) {
	for i := range hours {
		back := i > 0 && spike(hours, i-1)
		if !jump(hours, i) || back {
			continue
		}
		key := "station.jump"
		if spike(hours, i) {
			key = "station.spike"
		}
		warnings = append(warnings, fault.New(fault.Invalid, key, words.Args{"before": hours[i-1].TempC, "given": hours[i].TempC}).
			In(fault.Place{File: t.Name, Row: hours[i].Row, Column: columnTemp}))
	}
	return warnings
}
