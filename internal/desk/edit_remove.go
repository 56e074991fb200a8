package desk

import (
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// Remove takes a row out. While other rows point at it that is refused, naming
// them; with says that they follow: a row that cannot be without it goes too, in
// others the column is left blank. A row that is no longer of the version base
// gives a *Conflict.
func (o *Office) Remove(by Author, table, id string, base int64, with bool) (*KeptEntry, error) {
	if _, err := columnsOf(table); err != nil {
		return nil, err
	}
	return o.write(by, func() (journal.Entry, error) {
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		row, err := o.removable(n, table, id, base)
		if err != nil {
			return journal.Entry{}, err
		}
		r := removal{rows: n.rows, gone: map[string]bool{}}
		r.take(table, *row)
		if !with && len(r.pointing) > 0 {
			return journal.Entry{}, pointedAt(n, table, *row, r.pointing)
		}
		return journal.Entry{What: words.P("desk.edit_removed", words.Args{"what": n.row(table, row.Row)}), Changes: r.changes}, nil
	})
}

// removable returns the row to be removed when it may be.
func (o *Office) removable(n naming, table, id string, base int64) (*KeptRow, error) {
	rows := n.rows[table]
	at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == id })
	switch {
	case at < 0:
		return nil, noRow(table, id)
	case table == "holding":
		return nil, fault.New(fault.Conflict, "desk.remove_holding", nil)
	case rows[at].Version != base:
		return nil, &Conflict{Table: table, ID: id, Stood: rows[at].Row}
	}
	return &rows[at], nil
}

// mostNamed is how many rows are named before the rest are only counted.
const mostNamed = 5

func pointedAt(n naming, table string, row KeptRow, pointing []pointingRow) error {
	var named []words.Phrase
	for _, p := range pointing[:min(len(pointing), mostNamed)] {
		named = append(named, n.row(p.table, p.row.Row))
	}
	if more := len(pointing) - len(named); more > 0 {
		named = append(named, words.P("desk.remove_more", words.Args{"n": more}))
	}
	return fault.New(fault.Conflict, "desk.remove_pointed_at", words.Args{"what": n.row(table, row.Row), "by": named, "n": len(pointing)})
}

// removal gathers what goes and what changes with it.
type removal struct {
	rows     map[string][]KeptRow
	gone     map[string]bool
	pointing []pointingRow // directly at the row that was asked for, or at one that goes with it
	changes  []journal.Change
}

type pointingRow struct {
	table string
	row   KeptRow
}

// take removes a row after what points at it.
func (r *removal) take(table string, row KeptRow) {
	r.gone[table+"\x00"+row.ID] = true
	for _, p := range exchange.Pointers(table) {
		column := slices.Index(exchange.Columns(p.Table), p.Column)
		for _, other := range r.rows[p.Table] {
			if other.Row[column] != row.ID || r.gone[p.Table+"\x00"+other.ID] {
				continue
			}
			r.pointing = append(r.pointing, pointingRow{p.Table, other})
			if p.Required || p.Table == "records" && p.Column == "planting" {
				r.take(p.Table, other)
				continue
			}
			r.blank(p, other)
		}
	}
	r.changes = append(r.changes, journal.Change{Table: table, ID: row.ID, Before: row.Row, Place: row.Place})
	r.rows[table] = slices.DeleteFunc(slices.Clone(r.rows[table]), func(k KeptRow) bool { return k.ID == row.ID })
}

// blank leaves a column blank, and those that stand only beside it.
func (r *removal) blank(p exchange.Pointer, row KeptRow) {
	columns := exchange.Columns(p.Table)
	after := slices.Clone(row.Row)
	for _, name := range append([]string{p.Column}, p.With...) {
		after[slices.Index(columns, name)] = ""
	}
	r.changes = append(r.changes, journal.Change{Table: p.Table, ID: row.ID, Before: row.Row, After: after, Place: row.Place})
	rows := slices.Clone(r.rows[p.Table])
	for i := range rows {
		if rows[i].ID == row.ID {
			rows[i].Row = after
		}
	}
	r.rows[p.Table] = rows
}
