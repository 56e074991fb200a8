package station

import (
	"io"
	"math"
	"slices"

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
	if faults := missingColumns(t, columnTime, columnTemp); len(faults) > 0 {
		return nil, Report{}, faults
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
		return nil, report, fault.New(fault.Invalid, "station.no_hours", words.Args{"rows": report.Rows}).
			In(fault.Place{File: name})
	}
	dropSpikes(t, hours, &report)
	report.Warnings = append(report.Warnings, gapsOf(t, hours, stamps)...)
	report.Warnings = append(report.Warnings, unitsOf(t)...)
	sortByRow(report.Refused)
	return hours, report, nil
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

// dropSpikes leaves out a temperature that jumps and jumps back, and warns of
// one that stays.
func dropSpikes(t *table.Table, hours []climate.Hour, report *Report) {
	for i := 1; i < len(hours); i++ {
		h, before := &hours[i], &hours[i-1]
		jump := h.TempC - before.TempC
		if h.At() != before.At()+1 || !(math.Abs(jump) >= jumpC) {
			continue
		}
		row := slices.Index(t.Numbers, h.Row)
		args := words.Args{"before": before.TempC, "given": h.TempC}
		back := i+1 < len(hours) && math.Abs(hours[i+1].TempC-before.TempC) < jumpC && math.Abs(hours[i+1].TempC-h.TempC) >= jumpC/2
		if back {
			report.Refused = append(report.Refused, fault.New(fault.Invalid, "station.spike", args).In(t.At(row, columnTemp)))
			h.TempC = math.NaN()
			continue
		}
		report.Warnings = append(report.Warnings, fault.New(fault.Invalid, "station.jump", args).In(t.At(row, columnTemp)))
	}
}
