package soilcare

import (
	"garner/internal/cal"
	"garner/internal/record"
)

// Given is what a bed's soil was given, and when.
type Given struct {
	What   record.What
	Date   cal.Date
	Litres float64 // 0: not told in a volume
	Kg     float64 // 0: not told in a weight
}

// dressings are the records of soil in the order in which they are told.
var dressings = []record.What{record.Composted, record.Manured, record.Limed, record.Mulched}

// given is everything a bed was given up to a day.
func (f *facts) given(records []record.Record, bed string, today cal.Date) []Given {
	var out []Given
	for _, r := range records {
		if r.Bed != bed || r.Date > today {
			continue
		}
		for _, what := range dressings {
			if r.What != what {
				continue
			}
			g := Given{What: what, Date: r.Date}
			switch r.Unit {
			case "L":
				g.Litres = r.Value
			case "barrows":
				g.Litres = r.Value * f.value("barrow")
			case "kg":
				g.Kg = r.Value
			}
			out = append(out, g)
		}
	}
	return out
}

// last is the latest of a kind, nil when there is none.
func last(given []Given, what ...record.What) *Given {
	var latest *Given
	for i := range given {
		for _, w := range what {
			if given[i].What == w && (latest == nil || given[i].Date >= latest.Date) {
				latest = &given[i]
			}
		}
	}
	return latest
}
