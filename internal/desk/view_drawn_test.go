package desk

import (
	"testing"

	"garner/internal/exchange"
	"garner/internal/journal"
	"garner/internal/words"
)

// A step back goes to what was drawn last; steps forward take back the steps
// back, the last first, until something new is drawn.
func TestDrawnSteps(t *testing.T) {
	var entries []KeptEntry // the oldest first
	add := func(id, undoes, table string) {
		for i := range entries {
			if entries[i].ID == undoes {
				entries[i].UndoneBy = id
			}
		}
		entries = append(entries, KeptEntry{Entry: journal.Entry{ID: id, Undoes: undoes, What: words.P(id, nil),
			Changes: []journal.Change{{Table: table, ID: "h1"}}}})
	}
	steps := func(when, undo, undoSays, redo, redoSays string) {
		t.Helper()
		newest := make([]KeptEntry, len(entries))
		for i, e := range entries {
			newest[len(entries)-1-i] = e
		}
		got := stepsOf(newest)
		id := func(e *KeptEntry) string {
			if e == nil {
				return ""
			}
			return e.ID
		}
		if id(got.Undo) != undo || id(got.Redo) != redo || got.UndoSays.Key != undoSays || got.RedoSays.Key != redoSays {
			t.Errorf("%s: back takes %q (%s), forward %q (%s)", when, id(got.Undo), got.UndoSays.Key, id(got.Redo), got.RedoSays.Key)
		}
	}
	steps("at first", "", "", "", "")
	add("a", "", "beds")
	add("b", "", "features")
	add("c", "", "wants")
	steps("after two", "b", "b", "", "")
	add("b-", "b", "features")
	steps("one back", "a", "a", "b-", "b")
	add("a-", "a", "beds")
	steps("two back", "", "", "a-", "a")
	add("a+", "a-", "beds")
	steps("one forward", "a+", "a", "b-", "b")
	add("b+", "b-", "features")
	steps("two forward", "b+", "b", "", "")
	add("b--", "b+", "features")
	add("d", "", "beds")
	steps("drawn anew", "d", "d", "", "")
}

// What was done on a plan is told by what it was.
func TestDrawnChangesAreSaid(t *testing.T) {
	columns := exchange.Columns("beds")
	row := func(cells map[string]string) journal.Row {
		out := make(journal.Row, len(columns))
		for i, name := range columns {
			out[i] = cells[name]
		}
		return out
	}
	stands := map[string]string{"id": "h1", "name": "Home", "length_m": "4", "width_m": "1", "x_m": "3", "y_m": "2"}
	for want, changes := range map[string]map[string]string{
		"desk.edit_drawn_moved":  {"x_m": "4"},
		"desk.edit_drawn_off":    {"x_m": "", "y_m": ""},
		"desk.edit_drawn_turned": {"turn_deg": "5"},
		"desk.edit_drawn_sized":  {"length_m": "5", "x_m": "3.5"},
		"desk.edit_drawn_shaped": {"shape": "outline", "outline": "0 0; 4 0; 4 1"},
		"desk.edit_changed":      {"x_m": "4", "soil": "good"},
	} {
		after := map[string]string{}
		for name, cell := range stands {
			after[name] = cell
		}
		for name, cell := range changes {
			after[name] = cell
		}
		if got := (naming{}).said(journal.Change{Table: "beds", ID: "h1", Before: row(stands), After: row(after)}); got.Key != want {
			t.Errorf("%v is told as %s, want %s", changes, got.Key, want)
		}
	}
}
