package desk

import (
	"maps"
	"slices"
	"strings"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/near"
	"garner/internal/words"
)

// Save writes a row of a table: a new one when there is none with the id and
// base is 0; an empty id is taken from the cells, else made. Columns that cells does not name stay as
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
	c, stood := startOf(table, rows, id)
	given := make(journal.Row, len(columns))
	copy(given, c.Before)
	if wrong := fillIn(given, columns, cells); wrong != nil {
		return nil, wrong
	}
	if id == "" {
		if c.ID, err = o.idOf(table, cellsOf(columns, given), rows); err != nil {
			return nil, err
		}
	}
	given[0] = c.ID
	after, faults := exchange.Tidy(table, given)
	switch {
	case base != stood:
		return nil, &Conflict{Table: table, ID: c.ID, Yours: after, Stood: c.Before}
	case len(faults) > 0:
		return nil, faults
	case c.Before != nil && slices.Equal(after, c.Before):
		return nil, nil
	}
	c.After = after
	return &c, nil
}

// startOf is a change of a row before anything is said of it, and the version
// that last touched the row. A new row comes last.
func startOf(table string, rows []KeptRow, id string) (c journal.Change, stood int64) {
	c = journal.Change{Table: table, ID: id, Place: 1}
	if len(rows) > 0 {
		c.Place = rows[len(rows)-1].Place + 1
	}
	if at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == id }); at >= 0 {
		c.Before, c.Place, stood = rows[at].Row, rows[at].Place, rows[at].Version
	}
	return c, stood
}

// idOf is the id of a new row: the one given in its cells, else one that is made.
func (o *Office) idOf(table string, cells map[string]string, rows []KeptRow) (string, error) {
	id := strings.TrimSpace(cells["id"])
	switch {
	case id == "":
		return o.newID(table, cells)
	case slices.ContainsFunc(rows, func(r KeptRow) bool { return r.ID == id }):
		return "", fault.List{fault.New(fault.Conflict, "desk.id_taken", words.Args{"given": id}).In(fault.Place{File: table + ".csv", Column: "id"})}
	}
	return id, nil
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
