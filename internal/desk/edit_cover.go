package desk

import (
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/words"
)

// TakeOff takes a cover off a bed on a day and, when on is a day, puts it on
// again then: its spell is parted in two, in one entry. Both days must lie within
// the spell. A row that is no longer of the version base gives a *Conflict.
func (o *Office) TakeOff(by Author, spell string, off, on cal.Date, base int64) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, err
		}
		at := slices.IndexFunc(h.Covers, func(c place.CoverSpell) bool { return c.ID == spell })
		rows := n.rows["covers"]
		stood := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == spell })
		switch {
		case at < 0 || stood < 0:
			return journal.Entry{}, noRow("covers", spell)
		case rows[stood].Version != base:
			return journal.Entry{}, &Conflict{Table: "covers", ID: spell, Stood: rows[stood].Row}
		}
		if err := withinSpell(&h.Covers[at], off, on); err != nil {
			return journal.Entry{}, fault.List{err}
		}
		said := words.P("desk.edit_cover_off", words.Args{"what": n.row("covers", rows[stood].Row), "off": off})
		if on.IsSet() {
			said = words.P("desk.edit_cover_off_on", words.Args{"what": n.row("covers", rows[stood].Row), "off": off, "on": on})
		}
		return journal.Entry{What: said, Changes: partedSpell(rows, stood, off, on)}, nil
	})
}

// withinSpell finds days that cannot be: the fault's column is off or on.
func withinSpell(c *place.CoverSpell, off, on cal.Date) *fault.Error {
	switch {
	case !off.IsSet():
		return fault.New(fault.Invalid, "desk.cover_off_missing", nil).In(fault.Place{Column: "off"})
	case !c.Off.IsSet() && off <= c.On:
		return fault.New(fault.Invalid, "desk.cover_off_outside_open", words.Args{"on": c.On}).In(fault.Place{Column: "off"})
	case c.Off.IsSet() && (off <= c.On || off >= c.Off):
		return fault.New(fault.Invalid, "desk.cover_off_outside", words.Args{"on": c.On, "off": c.Off}).In(fault.Place{Column: "off"})
	case on.IsSet() && on <= off:
		return fault.New(fault.Invalid, "desk.cover_on_before_off", words.Args{"off": off}).In(fault.Place{Column: "on"})
	case on.IsSet() && c.Off.IsSet() && on >= c.Off:
		return fault.New(fault.Invalid, "desk.cover_on_outside", words.Args{"off": c.Off}).In(fault.Place{Column: "on"})
	}
	return nil
}

// partedSpell is what parting a spell comes to in the table: its row ends, and
// another like it begins.
func partedSpell(rows []KeptRow, at int, off, on cal.Date) []journal.Change {
	columns := exchange.Columns("covers")
	first := slices.Clone(rows[at].Row)
	first[slices.Index(columns, "off")] = off.String()
	changes := []journal.Change{{Table: "covers", ID: rows[at].ID, Before: rows[at].Row, After: first, Place: rows[at].Place}}
	if !on.IsSet() {
		return changes
	}
	again := slices.Clone(rows[at].Row)
	id := freeRowID(rows, rows[at].ID)
	again[slices.Index(columns, "id")], again[slices.Index(columns, "on")] = id, on.String()
	place := rows[at].Place + 1
	if at+1 < len(rows) {
		place = (rows[at].Place + rows[at+1].Place) / 2
	}
	return append(changes, journal.Change{Table: "covers", ID: id, After: again, Place: place})
}

// freeRowID is an id after another one that no row has.
func freeRowID(rows []KeptRow, like string) string {
	for n := 2; ; n++ {
		id := like + "-" + strconv.Itoa(n)
		if !slices.ContainsFunc(rows, func(r KeptRow) bool { return r.ID == id }) {
			return id
		}
	}
}
