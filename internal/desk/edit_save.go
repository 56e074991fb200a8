package desk

import (
	"maps"
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/near"
	"garner/internal/words"
)

// Save writes a row of a table: a new one when there is none with the id and
// base is 0; an empty id is then made. Columns that cells does not name stay as
// they are. A row that is no longer of the version base gives a *Conflict. What
// is wrong comes as a fault.List, each with the column it is about.
func (o *Office) Save(by Author, table, id string, cells map[string]string, base int64) (*KeptEntry, error) {
	columns, err := columnsOf(table)
	if err != nil {
		return nil, err
	}
	return o.write(by, func() (journal.Entry, error) {
		change, err := o.saving(table, columns, id, cells, base)
		if err != nil || change == nil {
			return journal.Entry{}, err
		}
		n, err := o.naming()
		return journal.Entry{What: n.said(*change), Changes: []journal.Change{*change}}, err
	})
}

// saving is the change that saving a row comes to, nil when it says nothing new.
func (o *Office) saving(table string, columns []string, id string, cells map[string]string, base int64) (*journal.Change, error) {
	rows, err := o.keeper.Rows(table)
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == id && id != "" })
	c := journal.Change{Table: table, ID: id, Place: 1}
	given := make(journal.Row, len(columns))
	stood := int64(0)
	switch {
	case at >= 0:
		c.Before, c.Place, stood = rows[at].Row, rows[at].Place, rows[at].Version
		copy(given, rows[at].Row)
	case len(rows) > 0:
		c.Place = rows[len(rows)-1].Place + 1
	}
	if wrong := fillIn(given, columns, cells); wrong != nil {
		return nil, wrong
	}
	if id == "" {
		if id, err = o.newID(table, cellsOf(columns, given)); err != nil {
			return nil, err
		}
		c.ID = id
	}
	given[0] = id
	after, faults := exchange.Tidy(table, given)
	switch {
	case base != stood:
		return nil, &Conflict{Table: table, ID: id, Yours: after, Stood: c.Before}
	case len(faults) > 0:
		return nil, faults
	case c.Before != nil && slices.Equal(after, c.Before):
		return nil, nil
	}
	c.After = after
	return &c, nil
}

// fillIn puts the cells of a form into a row. The id is not among what a form
// may change.
func fillIn(row journal.Row, columns []string, cells map[string]string) error {
	for _, name := range slices.Sorted(maps.Keys(cells)) {
		at := slices.Index(columns, name)
		if at < 0 {
			return unknownColumn(name, columns)
		}
		row[at] = cells[name]
	}
	return nil
}

func unknownColumn(name string, columns []string) error {
	if found := near.Names(name, columns, 1); len(found) > 0 {
		return fault.New(fault.NotFound, "desk.column_unknown_near", words.Args{"given": name, "near": found[0]})
	}
	return fault.New(fault.NotFound, "desk.column_unknown", words.Args{"given": name})
}
