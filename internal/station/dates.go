package station

import (
	"slices"
	"sort"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// The years a record may hold: from the first of the oldest series, Central
// England's, on.
const (
	earliestYear = 1659
	latestYear   = 2200
)

// datesOf reads the date of every row; None where the row is refused: no such
// date, a date that was there before, or one out of order. Of rows in disorder
// as few as possible are refused, so that one slip of the pen does not cost the
// rows after it.
func datesOf(t *table.Table, report *Report) []cal.Date {
	at := t.Column(columnDate)
	dates := make([]cal.Date, len(t.Rows))
	seen := map[cal.Date]int{}
	refuse := func(row int, key string, args words.Args) {
		report.Refused = append(report.Refused, fault.New(fault.Invalid, key, args).In(t.At(row, columnDate)))
		dates[row] = cal.None
	}
	for row := range t.Rows {
		cell := t.Rows[row][at]
		date, err := cal.Parse(cell)
		dates[row] = date
		switch {
		case err != nil:
			refuse(row, "station.no_such_date", words.Args{"given": cell})
		case date.Year() < earliestYear || date.Year() > latestYear:
			refuse(row, "station.year_impossible", words.Args{"given": cell, "low": earliestYear, "high": latestYear})
		case seen[date] > 0:
			refuse(row, "station.date_twice", words.Args{"given": date, "row": seen[date]})
		default:
			seen[date] = t.Numbers[row]
		}
	}
	for _, row := range outOfOrder(dates) {
		refuse(row, "station.date_out_of_order", words.Args{"given": dates[row]})
	}
	return dates
}

// outOfOrder returns the rows to leave out so that the rest rises: all but a
// longest rising run (patience sorting).
func outOfOrder(dates []cal.Date) (rows []int) {
	var ends []int // row that ends the best run of each length
	previous := make([]int, len(dates))
	for row, d := range dates {
		if d == cal.None {
			continue
		}
		n := sort.Search(len(ends), func(i int) bool { return dates[ends[i]] >= d })
		previous[row] = -1
		if n > 0 {
			previous[row] = ends[n-1]
		}
		if n == len(ends) {
			ends = append(ends, row)
		} else {
			ends[n] = row
		}
	}
	keep := make([]bool, len(dates))
	if len(ends) > 0 {
		for row := ends[len(ends)-1]; row >= 0; row = previous[row] {
			keep[row] = true
		}
	}
	for row, d := range dates {
		if d != cal.None && !keep[row] {
			rows = append(rows, row)
		}
	}
	return rows
}

func sortByRow(faults fault.List) {
	slices.SortStableFunc(faults, func(a, b *fault.Error) int { return a.At.Row - b.At.Row })
}
