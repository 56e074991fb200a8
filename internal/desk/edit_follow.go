package desk

import (
	"slices"
	"strings"

	"garner/internal/exchange"
	"garner/internal/journal"
)

// rowKey is a row of a table.
type rowKey struct{ table, id string }

// removal finds what goes with a row.
type removal struct {
	rows  map[string][]KeptRow // as they stand; not changed
	gone  map[rowKey]bool
	order []rowKey // what goes, each after what points at it
}

// take lets a row go after all rows that cannot be without it.
func (r *removal) take(key rowKey) {
	if r.gone[key] {
		return
	}
	r.gone[key] = true
	for _, p := range exchange.Pointers(key.table) {
		for _, row := range r.rows[p.Table] {
			if cellOf(p.Table, row.Row, p.Column) == key.id && r.follows(p, row.Row) {
				r.take(rowKey{p.Table, row.ID})
			}
		}
	}
	for _, step := range r.rows["changes"] {
		if stepMeans(step.Row, key) {
			r.take(rowKey{"changes", step.ID})
		}
	}
	if added := r.addedBy(key); added != "" {
		r.take(rowKey{"plantings", added})
	}
	r.order = append(r.order, key)
}

// follows tells whether a row goes with what it points at. A draft is nothing
// without its base, and a record nothing without its planting, its batch or the last
// thing it is about.
func (r *removal) follows(p exchange.Pointer, row journal.Row) bool {
	switch p.Table {
	case "plans":
		return true
	case "records":
		filled := 0
		for _, column := range []string{"planting", "bed", "store", "batch", "feature"} {
			if cellOf(p.Table, row, column) != "" {
				filled++
			}
		}
		return filled == 1 || p.Column == "planting" || p.Column == "batch"
	}
	return p.Required
}

// stepMeans tells whether a draft's step gives a planting what goes.
func stepMeans(step journal.Row, key rowKey) bool {
	columns := map[string]string{"beds": "bed", "stores": "store", "varieties": "variety", "plantings": "to"}
	column := columns[key.table]
	if column == "" {
		return false
	}
	value := cellOf("changes", step, "value")
	if cellOf("changes", step, "action") == "set" {
		return cellOf("changes", step, "field") == column && value == key.id
	}
	for _, piece := range strings.Split(value, ";") {
		name, id, _ := strings.Cut(piece, "=")
		if strings.TrimSpace(name) == column && strings.TrimSpace(id) == key.id {
			return true
		}
	}
	return false
}

// addedBy is the planting that a step adds, nothing when the row is no such
// step.
func (r *removal) addedBy(key rowKey) string {
	row := r.rowOf(key)
	if key.table != "changes" || row == nil || cellOf("changes", row.Row, "action") != "add" {
		return ""
	}
	return cellOf("changes", row.Row, "planting")
}

// changes are what the removal comes to: columns left blank, then rows taken
// out, the one asked for last.
func (r *removal) changes() []journal.Change {
	var out []journal.Change
	for _, table := range exchange.Tables() {
		for _, row := range r.rows[table] {
			if after := r.without(table, row.Row); !r.gone[rowKey{table, row.ID}] && !slices.Equal(after, row.Row) {
				out = append(out, journal.Change{Table: table, ID: row.ID, Before: row.Row, After: after, Place: row.Place})
			}
		}
	}
	for _, key := range r.order {
		if row := r.rowOf(key); row != nil { // a planting of a draft has no row
			out = append(out, journal.Change{Table: key.table, ID: key.id, Before: row.Row, Place: row.Place})
		}
	}
	return out
}

// without is a row without what points at rows that go.
func (r *removal) without(table string, row journal.Row) journal.Row {
	out := row
	for key := range r.gone {
		for _, p := range exchange.Pointers(key.table) {
			if p.Table == table && cellOf(table, out, p.Column) == key.id {
				out = blanked(table, out, append([]string{p.Column}, p.With...))
			}
		}
	}
	return out
}

// blanked is a row with columns left blank.
func blanked(table string, row journal.Row, names []string) journal.Row {
	out := slices.Clone(row)
	for _, name := range names {
		out[slices.Index(exchange.Columns(table), name)] = ""
	}
	return out
}

func (r *removal) rowOf(key rowKey) *KeptRow {
	rows := r.rows[key.table]
	if at := slices.IndexFunc(rows, func(k KeptRow) bool { return k.ID == key.id }); at >= 0 {
		return &rows[at]
	}
	return nil
}

// cellOf is the cell of a row in a column.
func cellOf(table string, row journal.Row, column string) string {
	return cellAt(row, slices.Index(exchange.Columns(table), column))
}
