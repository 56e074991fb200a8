package cover

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/covers.csv
var coversCSV string

//go:embed data/layers.csv
var layersCSV string

// marks say how a number was come by.
var marks = []string{"seen", "computed", "memory", "judgement"}

// book reads the data once; it never changes afterwards.
var book = sync.OnceValues(func() (map[Kind]*Cover, error) { return read(coversCSV, layersCSV) })

// read builds the covers from the text of the two data files and refuses a
// number without unit, source and mark, outside its range, or missing.
func read(coversText, layersText string) (map[Kind]*Cover, error) {
	rows, err := csv.NewReader(strings.NewReader(coversText)).ReadAll()
	if err != nil {
		return nil, err
	}
	given := map[Kind]map[string]float64{}
	for i, row := range rows[1:] {
		if err := readRow(given, row); err != nil {
			return nil, fmt.Errorf("covers.csv row %d: %w", i+2, err)
		}
	}
	covers := map[Kind]*Cover{Open: {kind: Open, open: true, light: 1, rain: 1}}
	for _, kind := range kinds[1:] {
		f, err := gather(given[kind])
		if err != nil {
			return nil, fmt.Errorf("covers.csv, %s: %w", kind, err)
		}
		covers[kind] = &Cover{kind: kind, own: f, light: f.lightShare, rain: f.rainShare}
	}
	return covers, nest(covers, layersText)
}

func readRow(given map[Kind]map[string]float64, row []string) error {
	kind, name, text, unit, source, mark := Kind(row[0]), row[1], row[2], row[3], row[4], row[5]
	i := slices.IndexFunc(columns, func(c column) bool { return c.name == name })
	switch {
	case !slices.Contains(kinds[1:], kind):
		return fmt.Errorf("no such cover: %q", kind)
	case i < 0:
		return fmt.Errorf("no such number: %q", name)
	case unit != columns[i].unit:
		return fmt.Errorf("%s is in %s, not %q", name, columns[i].unit, unit)
	case source == "" || !slices.Contains(marks, mark):
		return fmt.Errorf("%s has no source or mark", name)
	}
	value := never
	if text != "" || !columns[i].blank {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v >= columns[i].low && v <= columns[i].high) {
			return fmt.Errorf("%s is %q, not within %v to %v", name, text, columns[i].low, columns[i].high)
		}
		value = v
	}
	if given[kind] == nil {
		given[kind] = map[string]float64{}
	}
	given[kind][name] = value
	return nil
}

// gather puts a cover's numbers in their places. A room has the columns of
// rooms in place of the thermal ones.
func gather(given map[string]float64) (facts, error) {
	var f facts
	_, isRoom := given["held_night_c"]
	for _, c := range columns {
		value, ok := given[c.name]
		if wanted := !(c.room && !isRoom || c.thermal && isRoom); wanted != ok {
			return facts{}, fmt.Errorf("%s is missing or not its own", c.name)
		}
		*c.into(&f) = value
	}
	return f, nil
}

// nest puts each cover that lies within another under it.
func nest(covers map[Kind]*Cover, layersText string) error {
	rows, err := csv.NewReader(strings.NewReader(layersText)).ReadAll()
	if err != nil {
		return err
	}
	for i, row := range rows[1:] {
		inner, outer := covers[Kind(row[0])], covers[Kind(row[1])]
		if inner == nil || outer == nil || outer.outer != nil {
			return fmt.Errorf("layers.csv row %d: no such covers, or more than two layers", i+2)
		}
		inner.outer = &outer.own
		inner.light *= outer.light
		inner.rain *= outer.rain
	}
	return nil
}
