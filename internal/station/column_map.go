package station

import (
	"io"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// ColumnMap says once what the columns of a table of days are. Which it is for is
// known by the table's headings.
type ColumnMap struct {
	ID, Name  string
	Headings  string // all of them, as JoinHeadings writes them
	Date      string // the heading of each column; blank: there is none
	TMin      string
	TMax      string
	Rain      string
	Sun       string
	Radiation string
	Humidity  string
	Dew       string
	Wind      string

	DateOrder     string // of a list below each, and so on
	TempUnit      string
	RainUnit      string
	SunUnit       string
	RadiationUnit string
	WindUnit      string
	WindHeightM   float64 // of the cups above the ground [m]; 0: 2 m
	Missing       string  // what stands for a value that is not known, parted by semicolons
}

// The units and orders a map may name; the first is meant where none is.
var (
	DateOrders     = []string{"ymd", "dmy", "mdy"}
	TempUnits      = []string{"C", "F"}
	RainUnits      = []string{"mm", "cm", "in"}
	SunUnits       = []string{"h", "min"}
	RadiationUnits = []string{"MJ/m2", "J/cm2", "kWh/m2", "W/m2"}
	WindUnits      = []string{"m/s", "km/h", "mph", "kn"}
)

// times are what values of a unit are multiplied by to come to ours; Fahrenheit
// is turned by itself. W/m2 is the mean of the day.
var times = map[string]float64{
	"cm": 10, "in": inchMM, "min": 1.0 / 60, "J/cm2": 0.01, "kWh/m2": 3.6, "W/m2": daySeconds / 1e6,
	"km/h": kmhMS, "mph": mileMS, "kn": 1852.0 / 3600,
}

// JoinHeadings writes a table's headings as one text.
func JoinHeadings(headings []string) string { return strings.Join(headings, " | ") }

// fits tells whether a map is for a table with the headings.
func (m *ColumnMap) fits(headings []string) bool {
	return strings.EqualFold(m.Headings, JoinHeadings(headings))
}

// mapped is a column that a map names.
type mapped struct {
	column        *dailyColumn
	heading, unit string
}

// columns are the columns a map names, in the order of a daily record.
func (m *ColumnMap) columns() (out []mapped) {
	for _, c := range []mapped{
		{columnNamed(columnTMin), m.TMin, m.TempUnit}, {columnNamed(columnTMax), m.TMax, m.TempUnit},
		{columnNamed(columnRain), m.Rain, m.RainUnit}, {columnNamed(columnSun), m.Sun, m.SunUnit},
		{columnNamed(columnRadiation), m.Radiation, m.RadiationUnit}, {columnNamed(columnHumidity), m.Humidity, ""},
		{columnNamed(columnDew), m.Dew, m.TempUnit}, {columnNamed(columnWind), m.Wind, m.WindUnit},
	} {
		if c.heading != "" {
			out = append(out, c)
		}
	}
	return out
}

// readMapped reads days under headings that a column map explains.
func readMapped(r io.Reader, name string, o Options, found *Found) error {
	t, err := table.Read(r, name, MostBytes)
	if err != nil {
		return err
	}
	at := slices.IndexFunc(o.Maps, func(m ColumnMap) bool { return m.fits(t.Header) })
	if at < 0 {
		return fault.New(fault.NotFound, "station.headings_unknown", words.Args{"given": JoinHeadings(t.Header)}).
			In(fault.Place{File: name, Row: 1})
	}
	m := &o.Maps[at]
	if faults := m.check(t); len(faults) > 0 {
		return faults
	}
	found.Rows = len(t.Rows) + len(t.Refused)
	found.Refused = append(fault.List(nil), t.Refused...)
	book := newDayBook(&found.Report)
	columns := m.columns()
	for row := range t.Rows {
		m.row(t, row, columns, o, book, found)
	}
	found.Days = book.record(name, name, m.TMin)
	return nil
}

// check holds a map to the table it is for.
func (m *ColumnMap) check(t *table.Table) (faults fault.List) {
	if t.Column(m.Date) < 0 || m.Date == "" {
		faults = append(faults, fault.New(fault.Invalid, "station.map_column", words.Args{"column": m.Date}).In(fault.Place{File: t.Name, Row: 1}))
	}
	for _, c := range m.columns() {
		if t.Column(c.heading) < 0 {
			faults = append(faults, fault.New(fault.Invalid, "station.map_column", words.Args{"column": c.heading}).In(fault.Place{File: t.Name, Row: 1}))
		}
	}
	return faults
}

// row reads one row.
func (m *ColumnMap) row(t *table.Table, row int, columns []mapped, o Options, book *dayBook, found *Found) {
	cell := t.Rows[row][t.Column(m.Date)]
	date, ok := dateIn(cell, m.DateOrder)
	if !ok {
		book.refuse(t.At(row, m.Date), "station.map_date", words.Args{"given": cell, "order": orderOf(m.DateOrder)})
		return
	}
	if held := book.days[date]; held != nil {
		book.refuse(t.At(row, m.Date), "station.date_twice", words.Args{"given": date, "row": held.Row})
		return
	}
	kept := false
	for _, c := range columns {
		cell := t.Rows[row][t.Column(c.heading)]
		if missing(cell) || m.unknown(cell) {
			continue
		}
		v, ok := t.Number(cell)
		if !ok && c.column.name == columnRain && isTrace(cell) {
			v, ok = 0, true
		}
		if !ok {
			book.refuse(t.At(row, c.heading), "station.not_a_number_mapped", words.Args{"given": cell})
			continue
		}
		book.put(date, c.column, m.convert(c, v, o), t.At(row, c.heading))
		kept = true
	}
	if kept {
		found.Kept++
	}
}

// convert brings a value to our units.
func (m *ColumnMap) convert(c mapped, v float64, o Options) float64 {
	if c.unit == "F" {
		return rounded(celsius(v))
	}
	if by, known := times[c.unit]; known {
		v = rounded(v * by)
	}
	height := m.WindHeightM
	if o.WindHeightM > 0 {
		height = o.WindHeightM
	}
	if c.column.name == columnWind && height > 0 && height != 2 {
		v = rounded(climate.WindAt2M(v, height))
	}
	return v
}

// unknown tells a cell that stands for a value not known.
func (m *ColumnMap) unknown(cell string) bool {
	for _, mark := range strings.Split(m.Missing, ";") {
		if mark = strings.TrimSpace(mark); mark != "" && strings.EqualFold(mark, cell) {
			return true
		}
	}
	return false
}

// isTrace tells rain too little to measure.
func isTrace(cell string) bool {
	return strings.EqualFold(cell, "T") || strings.EqualFold(cell, "tr") || strings.EqualFold(cell, "trace")
}

// orderOf is the order meant.
func orderOf(order string) string {
	if order == "" {
		return DateOrders[0]
	}
	return order
}

// dateIn reads a date in an order: its three parts stand between signs that are
// neither letters nor digits, or are YYYYMMDD; a month may be its first three
// letters in English.
func dateIn(cell, order string) (cal.Date, bool) {
	cell, _, _ = strings.Cut(strings.TrimSpace(cell), " ")
	cell, _, _ = strings.Cut(cell, "T")
	if orderOf(order) == "ymd" && ghcnDate(cell) {
		cell = cell[:4] + "-" + cell[4:6] + "-" + cell[6:]
	}
	parts := strings.FieldsFunc(cell, func(r rune) bool {
		return (r < '0' || r > '9') && (r < 'a' || r > 'z') && (r < 'A' || r > 'Z')
	})
	if len(parts) != 3 {
		return cal.None, false
	}
	var year, month, day string
	switch orderOf(order) {
	case "dmy":
		day, month, year = parts[0], parts[1], parts[2]
	case "mdy":
		month, day, year = parts[0], parts[1], parts[2]
	default:
		year, month, day = parts[0], parts[1], parts[2]
	}
	if n := slices.Index(monthLetters, strings.ToLower(month)); n >= 0 {
		month = strconv.Itoa(n + 1)
	}
	y, errY := strconv.Atoi(year)
	m, errM := strconv.Atoi(month)
	d, errD := strconv.Atoi(day)
	if errY != nil || errM != nil || errD != nil || len(year) != 4 {
		return cal.None, false
	}
	date, err := cal.Parse(ymd(y, m, d))
	return date, err == nil
}

var monthLetters = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}
