package soilcare

import (
	"embed"
	"io/fs"
	"sync"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/*.csv
var data embed.FS

// Number is one number of the package with where it comes from.
type Number struct {
	Value               float64
	Unit                string
	Source, Mark, Where string
}

// green is what is known of a green manure beside the crop book.
type green struct {
	crop                string
	from, last          cal.MonthDay // sowing, in the north
	weeksLow, weeksHigh int          // from cutting or turning in to sowing
}

// facts are the data of the package; they never change.
type facts struct {
	numbers map[string]Number
	green   []green
	traits  map[string]string // by crop
}

var known = sync.OnceValues(func() (*facts, error) { return read(data) })

func read(files fs.FS) (*facts, error) {
	f := facts{numbers: map[string]Number{}, traits: map[string]string{}}
	n, err := table.OpenCells(files, "data/numbers.csv", "name", "value", "unit", "low", "high", "source", "mark", "where")
	if err != nil {
		return nil, err
	}
	for r := range n.Rows {
		low, high := n.Within(r, "low", 0, 1e6), n.Within(r, "high", 0, 1e6)
		f.numbers[n.Text(r, "name")] = Number{n.Within(r, "value", low, high), n.Text(r, "unit"), n.Text(r, "source"), n.Text(r, "mark"), n.Text(r, "where")}
	}
	if err := n.Err(); err != nil {
		return nil, err
	}
	for _, name := range names {
		if _, ok := f.numbers[name]; !ok {
			return nil, fault.New(fault.Internal, "soilcare.number_missing", words.Args{"name": name})
		}
	}
	if err := f.readGreen(files); err != nil {
		return nil, err
	}
	c, err := table.OpenCells(files, "data/crops.csv", "crop", "trait", "source", "mark")
	if err != nil {
		return nil, err
	}
	for r := range c.Rows {
		f.traits[c.Text(r, "crop")] = c.Text(r, "trait")
	}
	return &f, nil
}

func (f *facts) readGreen(files fs.FS) error {
	g, err := table.OpenCells(files, "data/green.csv", "crop", "sow_from", "sow_last", "weeks_low", "weeks_high", "source", "mark", "where")
	if err != nil {
		return err
	}
	for r := range g.Rows {
		f.green = append(f.green, green{g.Text(r, "crop"), cal.MonthDayOf(g.Day(r, "sow_from")), cal.MonthDayOf(g.Day(r, "sow_last")),
			int(g.Within(r, "weeks_low", 0, 20)), int(g.Within(r, "weeks_high", 0, 20))})
	}
	return g.Err()
}

// The traits of crops that matter to soil.
const (
	forks = "forks" // its root forks in manured ground
	scabs = "scabs" // it gets scab in limed ground
	clear = "clear" // what is eaten of it does not touch the soil
)

// names are the numbers there must be.
var names = []string{"compost_low", "compost_high", "dress_after", "barrow", "brassica_ph", "lime_light", "lime_medium", "lime_heavy",
	"lime_again", "lime_apart", "lime_potatoes", "manure_soil", "manure_clear", "manure_roots", "green_least", "sheet_least", "mulch_least",
	"turn_round", "stale_seedbed"}

func (f *facts) value(name string) float64 { return f.numbers[name].Value }
func (f *facts) days(name string) cal.Date { return cal.Date(f.numbers[name].Value) }

// Of returns a number of the package by its name, such as barrow [L].
func Of(name string) (Number, error) {
	f, err := known()
	if err != nil {
		return Number{}, err
	}
	return f.numbers[name], nil
}
