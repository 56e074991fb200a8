package desk

import (
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// Undo takes an entry back. Rows that have moved on since give a *Conflict; what
// now leans on the entry gives faults. Undoing an undoing makes the first entry
// again.
func (o *Office) Undo(by Author, entry string) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		e, err := o.keeper.Entry(entry)
		switch {
		case err != nil:
			return journal.Entry{}, err
		case e == nil:
			return journal.Entry{}, fault.New(fault.NotFound, "desk.undo_unknown", nil)
		case e.UndoneBy != "":
			return journal.Entry{}, fault.New(fault.Conflict, "desk.undo_already", words.Args{"what": e.What})
		}
		inverse := e.Inverse()
		if e.Undoes == "" {
			return inverse, o.standsFor(inverse.Changes)
		}
		first, err := o.keeper.Entry(e.Undoes)
		if err != nil || first == nil {
			return inverse, err
		}
		inverse.What = words.P("desk.edit_again", words.Args{"what": first.What})
		return inverse, o.standsFor(inverse.Changes)
	})
}

// standsFor tells by a *Conflict which row is no longer as an inverse entry
// expects, before the holding without it is judged.
func (o *Office) standsFor(changes []journal.Change) error {
	seen := map[string]bool{}
	for _, c := range changes {
		if key := c.Table + "\x00" + c.ID; seen[key] {
			continue
		} else {
			seen[key] = true
		}
		row, _, err := o.keeper.Row(c.Table, c.ID)
		if err != nil {
			return err
		}
		if !sameRow(row, c.Before) {
			return &Conflict{Table: c.Table, ID: c.ID, Yours: c.After, Stood: row}
		}
	}
	return nil
}

// sameRow tells whether two rows say the same; cells that are not there are
// blank.
func sameRow(a, b journal.Row) bool {
	if (a == nil) != (b == nil) {
		return false
	}
	for i := range max(len(a), len(b)) {
		if cellAt(a, i) != cellAt(b, i) {
			return false
		}
	}
	return true
}

func cellAt(row journal.Row, i int) string {
	if i >= 0 && i < len(row) {
		return row[i]
	}
	return ""
}
