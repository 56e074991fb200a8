package desk

import (
	"slices"

	"garner/internal/journal"
	"garner/internal/words"
)

// HangView is a row that leans on another one.
type HangView struct {
	Table, ID string
	Name      words.Phrase
	Goes      bool // it goes with the other; else it stays, without it
}

// Hangs lists what leans on a row and would follow when it is removed with all
// that hangs on it.
func (o *Office) Hangs(table, id string) ([]HangView, error) {
	n, err := o.naming()
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(n.rows[table], func(r KeptRow) bool { return r.ID == id })
	if at < 0 {
		return nil, noRow(table, id)
	}
	r := removal{rows: map[string][]KeptRow{}, gone: map[string]bool{}}
	for name, rows := range n.rows {
		r.rows[name] = rows
	}
	r.take(table, n.rows[table][at])
	var out []HangView
	for _, p := range r.pointing {
		goes := slices.ContainsFunc(r.changes, func(c journal.Change) bool { return c.Table == p.table && c.ID == p.row.ID && c.After == nil })
		out = append(out, HangView{Table: p.table, ID: p.row.ID, Name: n.row(p.table, p.row.Row), Goes: goes})
	}
	return out, nil
}
