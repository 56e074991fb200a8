package desk

import (
	"errors"
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// Author says who makes an entry and how it is known: Entry is its id, made by
// the client, and Key its idempotency key (empty: the id); At is the time as
// RFC 3339.
type Author struct{ Who, Device, Entry, Key, At string }

// RowView is a row of a table for a form.
type RowView struct {
	ID      string
	Cells   map[string]string // by column, as in the files
	Version int64             // of the entry that last touched it
}

// Rows returns a table's rows in their order.
func (o *Office) Rows(table string) ([]RowView, error) {
	columns, err := columnsOf(table)
	if err != nil {
		return nil, err
	}
	rows, err := o.keeper.Rows(table)
	if err != nil {
		return nil, err
	}
	out := make([]RowView, len(rows))
	for i, r := range rows {
		out[i] = RowView{ID: r.ID, Cells: cellsOf(columns, r.Row), Version: r.Version}
	}
	return out, nil
}

// Row returns a row of a table; a fault of kind NotFound when there is none.
func (o *Office) Row(table, id string) (*RowView, error) {
	columns, err := columnsOf(table)
	if err != nil {
		return nil, err
	}
	row, version, err := o.keeper.Row(table, id)
	if err != nil {
		return nil, err
	}
	if row == nil {
		return nil, noRow(table, id)
	}
	return &RowView{ID: id, Cells: cellsOf(columns, row), Version: version}, nil
}

// Cells names the cells of a row, so that a page can show both sides of a
// conflict; nil when there is no row.
func (o *Office) Cells(table string, row journal.Row) map[string]string {
	if row == nil {
		return nil
	}
	return cellsOf(exchange.Columns(table), row)
}

// Entries returns the newest entries, at most n.
func (o *Office) Entries(n int) ([]KeptEntry, error) { return o.keeper.Entries(0, n) }

func columnsOf(table string) ([]string, error) {
	columns := exchange.Columns(table)
	if columns == nil {
		return nil, fault.New(fault.NotFound, "exchange.no_such_table", words.Args{"given": table})
	}
	return columns, nil
}

func cellsOf(columns []string, row journal.Row) map[string]string {
	cells := make(map[string]string, len(columns))
	for i, name := range columns {
		if i < len(row) {
			cells[name] = row[i]
		}
	}
	return cells
}

func noRow(table, id string) error {
	return fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": kindName(table), "id": id})
}

// draftOf makes an entry over the holding as it stands, with the content of the
// weather files it brings. It is asked again when another entry came between.
type draftOf func() (e journal.Entry, files [][]byte, err error)

// mostTries is how often an edit is made anew because another process came
// between.
const mostTries = 8

// write makes the entry an edit comes to, once the whole holding with it is
// sound. An entry with the author's key is returned as it was made.
func (o *Office) write(by Author, draft func() (journal.Entry, error)) (*KeptEntry, error) {
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		e, err := draft()
		return e, nil, err
	})
}

func (o *Office) writeWith(by Author, draft draftOf) (*KeptEntry, error) {
	o.editing.Lock()
	defer o.editing.Unlock()
	if made, err := o.made(by); made != nil || err != nil {
		return made, err
	}
	for range mostTries {
		e, files, err := draft()
		if err != nil {
			return nil, err
		}
		if len(e.Changes) == 0 {
			return &KeptEntry{Entry: journal.Entry{What: words.P("desk.edit_nothing", nil)}}, nil
		}
		if e.Changes, err = o.withPlan(e.Changes); err != nil {
			return nil, err
		}
		e.ID, e.Key, e.Who, e.Device, e.At = by.Entry, by.key(), by.Who, by.Device, by.At
		over, err := o.sound(e.Changes, files)
		if err != nil {
			return nil, err
		}
		if _, err := o.keeper.Append(e, over, files...); errors.Is(err, ErrMoved) {
			continue
		} else if err != nil {
			return nil, err
		}
		return o.made(by)
	}
	return nil, fault.New(fault.Conflict, "desk.edit_busy", nil)
}

func (by Author) key() string {
	if by.Key != "" {
		return by.Key
	}
	return by.Entry
}

func (o *Office) made(by Author) (*KeptEntry, error) { return o.keeper.Made(by.key()) }

// sound holds the whole holding as it would be to the tables and the crop book,
// and returns the version it would be built upon. Only what the changes brought
// about is told.
func (o *Office) sound(changes []journal.Change, files [][]byte) (int64, error) {
	would, err := o.keeper.Would(changes, files...)
	if err != nil {
		return 0, err
	}
	found, err := faultsOf(would)
	if err != nil {
		return 0, err
	}
	if len(found) == 0 || isEmpty(would) {
		return would.Version, nil
	}
	known, err := o.knownFaults()
	if err != nil {
		return 0, err
	}
	found = slices.DeleteFunc(found, func(e *fault.Error) bool { return known[sameFault(e)] })
	if len(found) == 0 && would.Holding != nil {
		return would.Version, nil
	}
	return 0, placed(found, would, changes)
}

// isEmpty tells a holding whose beginning was taken back.
func isEmpty(d *Draft) bool {
	for _, rows := range d.Rows {
		if len(rows) > 0 {
			return false
		}
	}
	return true
}

// faultsOf is everything that is wrong with a drafted holding.
func faultsOf(d *Draft) (fault.List, error) {
	if d.Holding == nil {
		return d.Faults, nil
	}
	b, err := book()
	if err != nil {
		return nil, err
	}
	return exchange.Check(d.Holding, b), nil
}

// knownFaults are those of the holding as it stands: rules may have become
// stricter since a row was written.
func (o *Office) knownFaults() (map[string]bool, error) {
	stands, err := o.keeper.Would(nil)
	if err != nil {
		return nil, err
	}
	found, err := faultsOf(stands)
	known := map[string]bool{}
	for _, e := range found {
		known[sameFault(e)] = true
	}
	return known, err
}

// sameFault is what a fault says wherever its row has moved to.
func sameFault(e *fault.Error) string {
	own := e.In(fault.Place{File: e.At.File, Column: e.At.Column})
	return own.Error()
}
