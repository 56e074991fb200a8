package appetite

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strconv"
	"sync"

	"garner/internal/cal"
)

// Tick is how often a vegetable is eaten in its season. The list is closed.
type Tick string

// The ticks.
const (
	Often     Tick = "often"
	Sometimes Tick = "sometimes"
	Never     Tick = "never"
)

// Ticks are all ticks, the most first.
func Ticks() []Tick { return []Tick{Often, Sometimes, Never} }

// vegetable is one row of the data.
type vegetable struct {
	name     string
	usual    Tick
	portions float64      // of an adult a week in season, eaten often
	from, to cal.MonthDay // in the north; zero: all year
}

//go:embed data/vegetables.csv
var vegetablesFile []byte

// vegetables reads the data when it is first asked for.
var vegetables = sync.OnceValue(func() []vegetable {
	list, err := readVegetables()
	if err != nil {
		// The file is part of the program and every test reads it.
		panic("appetite: " + err.Error())
	}
	return list
})

func readVegetables() ([]vegetable, error) {
	rows, err := csv.NewReader(bytes.NewReader(vegetablesFile)).ReadAll()
	if err != nil {
		return nil, err
	}
	var out []vegetable
	for _, row := range rows[1:] {
		v := vegetable{name: row[0], usual: Tick(row[1])}
		if v.portions, err = strconv.ParseFloat(row[2], 64); err != nil {
			return nil, err
		}
		if err := v.from.UnmarshalText([]byte(row[3])); err != nil {
			return nil, err
		}
		if err := v.to.UnmarshalText([]byte(row[4])); err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, nil
}

// season returns the season at the table, half a year later in the south.
func (v *vegetable) season(south bool) (from, to cal.MonthDay) {
	if v.from.Month == 0 || !south {
		return v.from, v.to
	}
	return halfYearOn(v.from), halfYearOn(v.to)
}

// halfYearOn returns the same day six months later, or the last of that month.
func halfYearOn(d cal.MonthDay) cal.MonthDay {
	month := (d.Month+5)%12 + 1
	day := d.Day
	if day == cal.DaysInMonth(d.Month) {
		day = cal.DaysInMonth(month)
	}
	return cal.MonthDay{Month: month, Day: min(day, cal.DaysInMonth(month))}
}
