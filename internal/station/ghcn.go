package station

import (
	"io"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// ghcnElement is an element of GHCN-Daily: the column it fills and by how much
// its whole numbers are multiplied.
type ghcnElement struct {
	column *dailyColumn
	times  float64
}

// ghcnElements are the elements that are read. TMAX, TMIN and PRCP: tenths of a
// degree Celsius and of a millimetre. AWND: tenths of a metre a second, TSUN:
// minutes, RHAV: per cent, ADPT: tenths of a degree (from memory).
var ghcnElements = map[string]ghcnElement{
	"TMAX": {columnNamed(columnTMax), 0.1}, "TMIN": {columnNamed(columnTMin), 0.1}, "PRCP": {columnNamed(columnRain), 0.1},
	"AWND": {columnNamed(columnWind), 0.1}, "TSUN": {columnNamed(columnSun), 1.0 / 60}, "RHAV": {columnNamed(columnHumidity), 1},
	"ADPT": {columnNamed(columnDew), 0.1},
}

// ghcnOrder is the order in which the elements of a day are told.
var ghcnOrder = []string{"TMAX", "TMIN", "PRCP", "AWND", "TSUN", "RHAV", "ADPT"}

const (
	ghcnMissing = -9999
	ghcnWindM   = 10 // the usual height of the cups of such stations [m] (WMO-No. 8; memory)
	ghcnDays    = 31 // groups of a line, whatever the month
	ghcnGroup   = 8  // characters of a group
	ghcnHead    = 21 // characters before the first group
)

// ghcnReading is a file of GHCN-Daily while it is read.
type ghcnReading struct {
	book      *dayBook
	found     *Found
	windM     float64
	withdrawn int             // values that the publisher's checks failed
	others    map[string]bool // stations beside the first
	seen      map[string]int  // rows by element and month, of the fixed form
}

func newGHCN(o Options, found *Found) *ghcnReading {
	g := &ghcnReading{book: newDayBook(&found.Report), found: found, windM: o.WindHeightM, others: map[string]bool{}, seen: map[string]int{}}
	if g.windM == 0 {
		g.windM = ghcnWindM
	}
	return g
}

// readGHCN reads the fixed-width form: a line for a station, year, month and
// element, with 31 groups of a value and three flags. -9999 is a missing value and
// pads short months. A value with a quality flag failed a check of the publisher
// and is left out.
//
// Format: GHCN-Daily readme, section III, "format of data files" (National
// Centers for Environmental Information); columns as in the notes on formats kept
// with the samples.
func readGHCN(r io.Reader, name string, o Options, found *Found) error {
	g, l := newGHCN(o, found), newLines(r, name)
	for l.next() {
		if text := l.text(); strings.TrimSpace(text) != "" {
			found.Rows++
			g.line(text, l)
		}
	}
	if err := l.err(); err != nil {
		return err
	}
	return g.finish(name)
}

// line reads one line of the fixed-width form.
func (g *ghcnReading) line(text string, l *lines) {
	if !ghcnLine.MatchString(text) {
		g.book.refuse(l.at(""), "station.ghcn_line", nil)
		return
	}
	element := text[17:21]
	if !g.ours(text[:11], l.at("")) {
		return
	}
	year, _ := strconv.Atoi(text[11:15]) // digits, by the pattern
	month, _ := strconv.Atoi(text[15:17])
	if month < 1 || month > 12 || year < earliestYear || year > latestYear {
		g.book.refuse(l.at(element), "station.ghcn_month", words.Args{"given": text[11:17]})
		return
	}
	of, wanted := ghcnElements[element]
	if !wanted {
		return
	}
	if row := g.seen[text[11:21]]; row > 0 {
		g.book.refuse(l.at(element), "station.ghcn_line_twice", words.Args{"row": row})
		return
	}
	g.seen[text[11:21]] = l.row
	first := cal.Of(year, month, 1)
	length := monthLength(year, month)
	for day := 0; day < ghcnDays && ghcnHead+day*ghcnGroup+5 <= len(text); day++ {
		group := text[ghcnHead+day*ghcnGroup:]
		at := l.at(element + " " + strconv.Itoa(day+1))
		g.value(group[:5], flagOf(group, 5), flagOf(group, 6), of, first+cal.Date(day), day < length, at)
	}
	g.found.Kept++
}

// flagOf is a flag of a group, a space where the line ends before it.
func flagOf(group string, at int) byte {
	if at < len(group) {
		return group[at]
	}
	return ' '
}

// monthLength is the number of days of a month.
func monthLength(year, month int) int {
	return int(cal.Of(year, month+1, 1) - cal.Of(year, month, 1))
}

// ours tells whether a line is of the file's first station; lines of others are
// refused, once for each.
func (g *ghcnReading) ours(id string, at fault.Place) bool {
	if g.found.Station.ID == "" {
		g.found.Station.ID = id
	}
	if g.found.Station.ID == id {
		return true
	}
	if !g.others[id] {
		g.others[id] = true
		g.book.refuse(at, "station.other_station", words.Args{"given": id, "first": g.found.Station.ID})
	}
	return false
}

// value takes one value with its measurement and its quality flag.
func (g *ghcnReading) value(text string, measured, quality byte, of ghcnElement, date cal.Date, exists bool, at fault.Place) {
	v, err := strconv.Atoi(strings.TrimSpace(text))
	switch {
	case err != nil:
		g.book.refuse(at, "station.not_whole", words.Args{"given": strings.TrimSpace(text)})
		return
	case v == ghcnMissing:
		return
	case !exists:
		g.book.refuse(at, "station.no_such_day", words.Args{"given": v})
		return
	case quality != ' ':
		g.withdrawn++
		return
	case measured == 'T': // a trace: too little to measure
		v = 0
	}
	c := of.column
	scaled := float64(v) * of.times
	if of.times == 0.1 {
		scaled = float64(v) / 10 // exact to the digit that was written
	}
	if c.name == columnWind {
		scaled = climate.WindAt2M(scaled, g.windM)
	}
	g.book.put(date, c, scaled, at)
}

// finish makes the record.
func (g *ghcnReading) finish(name string) error {
	if g.withdrawn > 0 {
		g.found.Warnings = append(g.found.Warnings, fault.New(fault.Invalid, "station.withdrawn", words.Args{"n": g.withdrawn}).
			In(fault.Place{File: name}))
	}
	g.found.Days = g.book.record(g.found.Station.ID, name, "TMIN")
	return nil
}
