package station

import (
	"io"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// normalColumn is a column of the normals and how it is set.
type normalColumn struct {
	column
	set func(*climate.MonthNormal, climate.Maybe)
	get func(*climate.MonthNormal) climate.Maybe
}

var normalColumns = []normalColumn{
	{dailyTMin, func(n *climate.MonthNormal, v climate.Maybe) { n.TMinC = v.Value },
		func(n *climate.MonthNormal) climate.Maybe { return climate.Is(n.TMinC) }},
	{dailyTMax, func(n *climate.MonthNormal, v climate.Maybe) { n.TMaxC = v.Value },
		func(n *climate.MonthNormal) climate.Maybe { return climate.Is(n.TMaxC) }},
	{monthRain, func(n *climate.MonthNormal, v climate.Maybe) { n.RainMM = v.Value },
		func(n *climate.MonthNormal) climate.Maybe { return climate.Is(n.RainMM) }},
	{sunshine, func(n *climate.MonthNormal, v climate.Maybe) { n.SunH = v },
		func(n *climate.MonthNormal) climate.Maybe { return n.SunH }},
	{radiation, func(n *climate.MonthNormal, v climate.Maybe) { n.RadiationMJ = v },
		func(n *climate.MonthNormal) climate.Maybe { return n.RadiationMJ }},
	{humidity, func(n *climate.MonthNormal, v climate.Maybe) { n.HumidityPct = v },
		func(n *climate.MonthNormal) climate.Maybe { return n.HumidityPct }},
	{wind, func(n *climate.MonthNormal, v climate.Maybe) { n.WindMS = v },
		func(n *climate.MonthNormal) climate.Maybe { return n.WindMS }},
}

// ReadNormals reads a table of twelve monthly normals. The error is a fault.List
// with every fault of the table, or the fault of a file that is no table.
// Whether the sunshine fits the length of the day needs the place:
// climate.Normals.CheckAt tells that.
func ReadNormals(r io.Reader, name string) (*climate.Normals, error) {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return nil, err
	}
	if faults := missingColumns(t, columnMonth, columnTMin, columnTMax, columnRain); len(faults) > 0 {
		return nil, faults
	}
	n := &climate.Normals{}
	faults := append(fault.List(nil), t.Refused...)
	var rowOf [12]int
	for row := range t.Rows {
		month, f := monthOf(t, row)
		if f == nil && rowOf[month-1] > 0 {
			f = fault.New(fault.Invalid, "station.month_twice", words.Args{"month": month, "row": rowOf[month-1]}).
				In(t.At(row, columnMonth))
		}
		if f != nil {
			faults = append(faults, f)
			continue
		}
		rowOf[month-1] = t.Numbers[row]
		faults = append(faults, readMonth(t, row, &n[month-1])...)
	}
	for i, row := range rowOf {
		if row == 0 {
			faults = append(faults, fault.New(fault.Invalid, "station.month_missing", words.Args{"month": i + 1}).
				In(fault.Place{File: name, Column: columnMonth}))
		}
	}
	if len(faults) == 0 {
		faults = whole(t, n)
	}
	if len(faults) > 0 {
		sortByRow(faults)
		return nil, faults
	}
	return n, nil
}

func monthOf(t *table.Table, row int) (int, *fault.Error) {
	cell := t.Rows[row][t.Column(columnMonth)]
	v, ok := t.Number(cell)
	if !ok || v != float64(int(v)) || v < 1 || v > 12 {
		return 0, fault.New(fault.Invalid, "station.no_such_month", words.Args{"given": cell}).In(t.At(row, columnMonth))
	}
	return int(v), nil
}

// readMonth reads the values of one month.
func readMonth(t *table.Table, row int, n *climate.MonthNormal) (faults fault.List) {
	read := map[string]bool{}
	for _, c := range normalColumns {
		v, f := c.value(t, row, t.Column(c.name))
		switch {
		case f != nil:
			faults = append(faults, hintAtSums(f))
		case c.required && !v.Known:
			faults = append(faults, fault.New(fault.Invalid, "station.value_missing", nil).In(t.At(row, c.name)))
		}
		c.set(n, v)
		read[c.name] = v.Known
	}
	if read[columnTMin] && read[columnTMax] && n.TMinC > n.TMaxC {
		faults = append(faults, fault.New(fault.Invalid, "station.minimum_above_maximum",
			words.Args{"tmin": n.TMinC, "tmax": n.TMaxC}).In(t.At(row, columnTMin)))
	}
	return faults
}

// hintAtSums gives sunshine and radiation beyond a day's a text of their own:
// mostly they are the month's sum.
func hintAtSums(f *fault.Error) *fault.Error {
	daily := f.At.Column == columnSun || f.At.Column == columnRadiation
	given, ok := f.Phrase.Args["given"].(float64)
	high, _ := f.Phrase.Args["high"].(float64)
	if !daily || !ok || given <= high {
		return f
	}
	return fault.New(fault.Invalid, "station.monthly_sum", words.Args{"given": given, "high": high}).In(f.At)
}

// whole looks at the table as a whole: a column given in some months only, and
// temperatures that look like Fahrenheit.
func whole(t *table.Table, n *climate.Normals) (faults fault.List) {
	for _, c := range normalColumns {
		known := 0
		for i := range n {
			if c.get(&n[i]).Known {
				known++
			}
		}
		if known > 0 && known < len(n) {
			faults = append(faults, fault.New(fault.Invalid, "station.column_has_holes",
				words.Args{"column": c.name, "months": known}).In(fault.Place{File: t.Name, Column: c.name}))
		}
	}
	mean := 0.0
	for i := range n {
		mean += (n[i].TMinC + n[i].TMaxC) / 24
	}
	if mean > warmestMeanC {
		faults = append(faults, fault.New(fault.Invalid, "station.normals_fahrenheit", words.Args{"mean": mean}).
			In(fault.Place{File: t.Name, Column: columnTMax}))
	}
	return faults
}
