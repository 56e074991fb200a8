package desk

import (
	"slices"

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
	if !slices.ContainsFunc(n.rows[table], func(r KeptRow) bool { return r.ID == id }) {
		return nil, noRow(table, id)
	}
	r := removal{rows: n.rows, gone: map[rowKey]bool{}}
	r.take(rowKey{table, id})
	var out []HangView
	for _, c := range r.changes() {
		if c.Table != table || c.ID != id {
			out = append(out, HangView{Table: c.Table, ID: c.ID, Name: n.row(c.Table, c.Before), Goes: c.After == nil})
		}
	}
	return out, nil
}
