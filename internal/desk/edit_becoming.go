package desk

import (
	"slices"

	"garner/internal/journal"
)

// becoming is what makes a table's rows into others, in their order. When rows
// that stay have changed places, all are taken out and put in anew.
func becoming(table string, stands []KeptRow, rows [][]string) []journal.Change {
	var out []journal.Change
	wanted := map[string]bool{}
	for _, r := range rows {
		wanted[r[0]] = true
	}
	at := map[string]int{}
	for i, r := range stands {
		at[r.ID] = i
		if !wanted[r.ID] {
			out = append(out, journal.Change{Table: table, ID: r.ID, Before: r.Row, Place: r.Place})
		}
	}
	places := placesFor(stands, at, rows)
	for i, row := range rows {
		c := journal.Change{Table: table, ID: row[0], After: row, Place: places[i]}
		if k, known := at[row[0]]; known {
			c.Before = stands[k].Row
			if stands[k].Place != c.Place {
				out = append(out, journal.Change{Table: table, ID: row[0], Before: c.Before, Place: stands[k].Place})
				c.Before = nil
			} else if slices.Equal(c.Before, c.After) {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// placesFor gives rows rising places. Those that stand keep theirs when they
// are still in the same order, and there is room between them.
func placesFor(stands []KeptRow, at map[string]int, rows [][]string) []float64 {
	places := make([]float64, len(rows))
	last, waiting := 0.0, 0 // the place before, and rows since that need one
	for i, row := range rows {
		k, known := at[row[0]]
		if !known {
			waiting++
			continue
		}
		if !spread(places[i-waiting:i], last, stands[k].Place) {
			return counted(len(rows))
		}
		places[i], last, waiting = stands[k].Place, stands[k].Place, 0
	}
	for i := len(rows) - waiting; i < len(rows); i++ {
		last++
		places[i] = last
	}
	return places
}

// spread puts places between two others; false when they do not rise.
func spread(places []float64, from, to float64) bool {
	step := (to - from) / float64(len(places)+1)
	before := from
	for i := range places {
		places[i] = from + step*float64(i+1)
		if places[i] <= before {
			return false
		}
		before = places[i]
	}
	return before < to
}

// counted are the places 1, 2, 3 and on.
func counted(n int) []float64 {
	places := make([]float64, n)
	for i := range places {
		places[i] = float64(i + 1)
	}
	return places
}
