package station

import (
	"io"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// Report tells what became of a file.
type Report struct {
	Rows, Kept int        // rows below the header, and those of which something was kept
	Refused    fault.List // rows and values that cannot be
	Warnings   fault.List // what looks odd but was taken
	Doubtful   fault.List // values that can be but hardly are; Found.DropDoubtful leaves them out
	Wrong      fault.List // what makes the file as a whole unfit, such as other units
}

// dailyColumn is a column and the field it fills.
type dailyColumn struct {
	column
	field func(*climate.Observation) *climate.Maybe
}

var dailyColumns = []dailyColumn{
	{dailyTMin, func(o *climate.Observation) *climate.Maybe { return &o.TMinC }},
	{dailyTMax, func(o *climate.Observation) *climate.Maybe { return &o.TMaxC }},
	{dailyRain, func(o *climate.Observation) *climate.Maybe { return &o.RainMM }},
	{sunshine, func(o *climate.Observation) *climate.Maybe { return &o.SunH }},
	{radiation, func(o *climate.Observation) *climate.Maybe { return &o.RadiationMJ }},
	{humidity, func(o *climate.Observation) *climate.Maybe { return &o.HumidityPct }},
	{dew, func(o *climate.Observation) *climate.Maybe { return &o.DewC }},
	{wind, func(o *climate.Observation) *climate.Maybe { return &o.WindMS }},
}

// ReadDaily reads a daily record. Values that cannot be are left out and told in
// the report; a row whose date cannot be is left out as a whole. Wind is at 2 m
// unless its column tells another height. The error is for a file of which nothing
// can be used.
func ReadDaily(r io.Reader, name string) (*climate.Record, Report, error) {
	return ReadDailyAt(r, name, 0)
}

// ReadDailyAt is ReadDaily for a record whose wind was measured at a height above
// the ground [m]; 0: as its column tells.
func ReadDailyAt(r io.Reader, name string, windHeightM float64) (*climate.Record, Report, error) {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return nil, Report{}, err
	}
	if told := rename(t); windHeightM == 0 {
		windHeightM = told
	}
	if faults := missingColumns(t, columnDate, columnTMin, columnTMax); len(faults) > 0 {
		return nil, Report{}, faults
	}
	report := Report{Rows: len(t.Rows) + len(t.Refused), Refused: append(fault.List(nil), t.Refused...)}
	names := []string{columnDate, columnHumidityMost, columnHumidityLeast}
	for _, c := range dailyColumns {
		names = append(names, c.name)
	}
	report.Warnings = unknownColumns(t, names...)
	dates := datesOf(t, &report)
	record := &climate.Record{ID: name}
	raw := newRawTemperatures(t)
	places := placesOf(t)
	for row, date := range dates {
		raw.see(row)
		if date == cal.None {
			continue
		}
		o := observe(t, row, date, places, &report)
		takeExtremes(&o, t, row, &report)
		lowerWind(&o, windHeightM)
		record.Days = append(record.Days, o)
	}
	report.Kept = len(record.Days)
	report.Warnings = append(report.Warnings, raw.warnings(name)...)
	sortByRow(report.Refused)
	if report.Kept == 0 {
		return nil, report, fault.New(fault.Invalid, "station.no_days", words.Args{"rows": report.Rows}).
			In(fault.Place{File: name})
	}
	return record, report, nil
}

func placesOf(t *table.Table) (places []int) {
	for _, c := range dailyColumns {
		places = append(places, t.Column(c.name))
	}
	return places
}

// observe reads the values of one row.
func observe(t *table.Table, row int, date cal.Date, places []int, report *Report) climate.Observation {
	o := climate.Observation{Date: date, Row: t.Numbers[row]}
	for i, c := range dailyColumns {
		v, f := c.value(t, row, places[i])
		if f != nil {
			report.Refused = append(report.Refused, f)
		}
		*c.field(&o) = v
	}
	if o.TMinC.Known && o.TMaxC.Known && o.TMinC.Value > o.TMaxC.Value {
		report.Refused = append(report.Refused, fault.New(fault.Invalid, "station.minimum_above_maximum",
			words.Args{"tmin": o.TMinC.Value, "tmax": o.TMaxC.Value}).In(t.At(row, columnTMin)))
		o.TMinC, o.TMaxC = climate.Maybe{}, climate.Maybe{}
	}
	if o.DewC.Known && o.TMaxC.Known && o.DewC.Value > o.TMaxC.Value {
		report.Refused = append(report.Refused, fault.New(fault.Invalid, "station.dew_above_maximum",
			words.Args{"dew": o.DewC.Value, "tmax": o.TMaxC.Value}).In(t.At(row, columnDew)))
		o.DewC = climate.Maybe{}
	}
	return o
}
