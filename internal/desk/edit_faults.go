package desk

import (
	"strings"

	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// placed brings the faults of a drafted holding to the form they came from: a
// fault of the one row that was written keeps its column, a fault of another row
// names that row.
func placed(found fault.List, would *Draft, changes []journal.Change) fault.List {
	out := make(fault.List, 0, len(found))
	for _, e := range found {
		table, isTable := strings.CutSuffix(e.At.File, ".csv")
		row := rowAt(would.Rows[table], e.At.Row)
		switch {
		case !isTable || row == nil:
			out = append(out, e)
		case len(changes) == 1 && changes[0].Table == table && changes[0].ID == row.ID:
			out = append(out, e.In(fault.Place{File: e.At.File, Column: e.At.Column}))
		default:
			elsewhere := fault.New(e.Kind, "desk.edit_elsewhere", words.Args{"where": naming{would.Rows}.row(table, row.Row), "problem": e.Phrase})
			out = append(out, elsewhere)
		}
	}
	return out
}

// rowAt is the row with a number as in the files, the header being row 1; nil
// when there is none.
func rowAt(rows []KeptRow, number int) *KeptRow {
	if number < 2 || number-2 >= len(rows) {
		return nil
	}
	return &rows[number-2]
}
