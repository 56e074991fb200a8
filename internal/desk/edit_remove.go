package desk

import (
	"slices"

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
		r := removal{rows: n.rows, gone: map[rowKey]bool{}}
		r.take(rowKey{table, row.ID})
		changes := r.changes()
		if !with && len(changes) > 1 {
			return journal.Entry{}, pointedAt(n, changes)
		}
		return journal.Entry{What: words.P("desk.edit_removed", words.Args{"what": n.row(table, row.Row)}), Changes: changes}, nil
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

// pointedAt refuses to take out a row, the last of the changes, and names the
// others.
func pointedAt(n naming, changes []journal.Change) error {
	row := changes[len(changes)-1]
	others := changes[:len(changes)-1]
	var named []words.Phrase
	for _, c := range others[:min(len(others), mostNamed)] {
		named = append(named, n.row(c.Table, c.Before))
	}
	if more := len(others) - len(named); more > 0 {
		named = append(named, words.P("desk.remove_more", words.Args{"n": more}))
	}
	return fault.New(fault.Conflict, "desk.remove_pointed_at", words.Args{"what": n.row(row.Table, row.Before), "by": named, "n": len(others)})
}
