package mend

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/outlook"
	"garner/internal/words"
)

// Question asks how to mend a gap.
type Question struct {
	Vegetable string   // row of the table
	Group     string   // id of the group that the row is of; empty: of a vegetable
	Feeds     []string // vegetables that fill it; empty: itself
	On        cal.Date // a day of the gap, or the last before it; None or zero: the gap in which most lacks
}

// row is a row of the table with what fills it.
type row struct {
	index  int
	group  string // id; empty: the row is of a vegetable
	weekly outlook.Weekly
	feeds  []string
}

// row finds a row of the table.
func (m *Mender) row(q *Question) (*row, error) {
	for i := range m.adviser.Table.Vegetables {
		if m.adviser.Table.Vegetables[i].Name != q.Vegetable {
			continue
		}
		r := &row{index: i, group: q.Group, weekly: m.adviser.Table.Weekly(i, true), feeds: q.Feeds}
		if len(r.feeds) == 0 {
			r.feeds = []string{q.Vegetable}
		}
		return r, nil
	}
	return nil, fault.New(fault.NotFound, "mend.vegetable_unknown", words.Args{"vegetable": q.Vegetable})
}

// chosen is the gap that is asked about; -1 when there is none.
func chosen(gaps []outlook.Gap, on cal.Date) int {
	asked := on.IsSet() && on != 0
	best := -1
	for i := range gaps {
		switch {
		case asked && gaps[i].Last >= on:
			return i
		case !asked && (best < 0 || gaps[i].ShortKg > gaps[best].ShortKg):
			best = i
		}
	}
	return best
}

// fedBy tells whether a vegetable fills the row.
func (r *row) fedBy(vegetable string) bool { return slices.Contains(r.feeds, vegetable) }
