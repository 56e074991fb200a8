package station

import (
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// readGHCNStation reads the two CSV forms of GHCN-Daily: one value a row (station,
// YYYYMMDD, element, value, measurement, quality and source flag, with or without
// headings), and one day a row (headings STATION, DATE, the elements, and for each
// a column NAME_ATTRIBUTES with its flags). Values are in the units of the
// fixed-width form.
//
// Format: readme of the by-station files of GHCN-Daily, and the documentation of
// its day-a-row files (from memory), National Centers for Environmental
// Information.
func readGHCNStation(r io.Reader, name string, o Options, found *Found) error {
	g := newGHCN(o, found)
	in := newRows(r, name)
	first, err := in.next()
	if errors.Is(err, io.EOF) {
		return fault.New(fault.Invalid, "table.empty", nil).In(fault.Place{File: name})
	}
	if err != nil {
		return err
	}
	take := g.longRow
	if headings := upper(first); !ghcnDate(cellOf(headings, 1)) {
		if slices.Contains(headings, "ELEMENT") {
			first = nil
		} else {
			take, first = g.wideRow(headings), nil
		}
	}
	if first != nil {
		found.Rows++
		take(first, in)
	}
	if err := in.each(func(row []string) { found.Rows++; take(row, in) }); err != nil {
		return err
	}
	return g.finish(name)
}

func upper(cells []string) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = strings.ToUpper(strings.TrimSpace(c))
	}
	return out
}

func cellOf(cells []string, at int) string {
	if at < 0 || at >= len(cells) {
		return ""
	}
	return strings.TrimSpace(cells[at])
}

// ghcnDate tells a date as YYYYMMDD.
func ghcnDate(cell string) bool {
	_, err := strconv.Atoi(cell)
	return err == nil && len(cell) == 8
}

// longRow takes a row with one value.
func (g *ghcnReading) longRow(row []string, in *csvRows) {
	if len(row) < 4 || !g.ours(cellOf(row, 0), in.at("")) {
		if len(row) < 4 {
			g.book.refuse(in.at(""), "station.ghcn_row", nil)
		}
		return
	}
	text, element := cellOf(row, 1), cellOf(row, 2)
	of, wanted := ghcnElements[element]
	if !wanted {
		return
	}
	if !ghcnDate(text) {
		g.book.refuse(in.at("DATE"), "station.ghcn_date", words.Args{"given": text})
		return
	}
	date, err := cal.Parse(text[:4] + "-" + text[4:6] + "-" + text[6:])
	if err != nil {
		g.book.refuse(in.at("DATE"), "station.ghcn_date", words.Args{"given": text})
		return
	}
	g.value(cellOf(row, 3), flag(cellOf(row, 4)), flag(cellOf(row, 5)), of, date, true, in.at(element))
	g.found.Kept++
}

// flag is a flag in a cell of its own; none is a space.
func flag(cell string) byte {
	if cell == "" {
		return ' '
	}
	return cell[0]
}

// wideRow takes rows with one day each, under headings.
func (g *ghcnReading) wideRow(headings []string) func([]string, *csvRows) {
	at := map[string]int{}
	for i, h := range headings {
		at[h] = i
	}
	col := func(name string) int {
		if i, ok := at[name]; ok {
			return i
		}
		return -1
	}
	return func(row []string, in *csvRows) {
		if !g.ours(cellOf(row, col("STATION")), in.at("")) {
			return
		}
		g.whereabouts(row, col)
		date, err := cal.Parse(cellOf(row, col("DATE")))
		if err != nil {
			g.book.refuse(in.at("DATE"), "station.no_such_date", words.Args{"given": cellOf(row, col("DATE"))})
			return
		}
		for _, element := range ghcnOrder {
			of, cell := ghcnElements[element], cellOf(row, col(element))
			if cell == "" {
				continue
			}
			flags := strings.Split(cellOf(row, col(element+"_ATTRIBUTES")), ",")
			g.value(cell, flag(flags[0]), flag(cellOf(flags, 1)), of, date, true, in.at(element))
		}
		g.found.Kept++
	}
}

// whereabouts takes what a row tells of the station.
func (g *ghcnReading) whereabouts(row []string, col func(string) int) {
	s := &g.found.Station
	if s.Name != "" {
		return
	}
	s.Name = cellOf(row, col("NAME"))
	s.LatitudeDeg = within(cellOf(row, col("LATITUDE")), -90, 90)
	s.LongitudeDeg = within(cellOf(row, col("LONGITUDE")), -180, 180)
	s.ElevationM = within(cellOf(row, col("ELEVATION")), -430, 9000)
}

// within reads a number between two others; nothing where it is not.
func within(cell string, low, high float64) climate.Maybe {
	v, err := strconv.ParseFloat(strings.TrimSpace(cell), 64)
	if err != nil || !(v >= low && v <= high) {
		return climate.Maybe{}
	}
	return climate.Is(v)
}
