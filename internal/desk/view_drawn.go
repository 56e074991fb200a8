package desk

import (
	"garner/internal/exchange"
	"garner/internal/words"
)

// DrawnOdd is something about a thing on a plan that is worth a look.
type DrawnOdd struct {
	Table, ID string // beds or features
	Site      string
	Says      words.Phrase
}

// OddlyDrawn tells what is worth a look on the plans: beds over each other, and
// what stands in a bed.
func (o *Office) OddlyDrawn() ([]DrawnOdd, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	var out []DrawnOdd
	for _, w := range exchange.Warnings(h) {
		row := w.At.Row - 2 // below the heads, counted from 0
		switch {
		case w.At.File == "beds.csv" && row >= 0 && row < len(h.Beds):
			out = append(out, DrawnOdd{"beds", h.Beds[row].ID, h.Beds[row].Site, w.Phrase})
		case w.At.File == "features.csv" && row >= 0 && row < len(h.Features):
			out = append(out, DrawnOdd{"features", h.Features[row].ID, h.Features[row].Site, w.Phrase})
		}
	}
	return out, nil
}

// DrawnSteps are the entries that taking one step back or forward on the plans
// takes back; nil where there is none.
type DrawnSteps struct {
	Undo, Redo *KeptEntry
	UndoSays   words.Phrase // what is undone
	RedoSays   words.Phrase
}

// DrawnSteps finds what was last drawn and what was last undone. What was undone
// can be done again until something else is drawn.
func (o *Office) DrawnSteps() (DrawnSteps, error) {
	entries, err := o.Entries(drawnBack)
	if err != nil {
		return DrawnSteps{}, err
	}
	return stepsOf(entries), nil
}

// drawnBack is how many entries are looked through for a step.
const drawnBack = 200

// stepsOf finds the steps among entries, the newest first.
func stepsOf(entries []KeptEntry) DrawnSteps {
	at := map[string]int{}
	for i := range entries {
		at[entries[i].ID] = i
	}
	var out DrawnSteps
	newest := len(entries) // the place of the newest undoing found
	for i := range entries {
		if entries[i].Undoes != "" || !drawn(&entries[i]) {
			continue
		}
		last, stands := i, true
		for entries[last].UndoneBy != "" {
			next, known := at[entries[last].UndoneBy]
			if !known {
				break
			}
			last, stands = next, !stands
		}
		switch {
		case stands && out.Undo == nil:
			out.Undo, out.UndoSays = &entries[last], entries[i].What
		case !stands && last < newest && out.Undo == nil:
			newest, out.Redo, out.RedoSays = last, &entries[last], entries[i].What
		}
	}
	return out
}

// drawn tells whether an entry changed nothing but plans.
func drawn(e *KeptEntry) bool {
	for _, c := range e.Changes {
		if c.Table != "sites" && c.Table != "beds" && c.Table != "features" {
			return false
		}
	}
	return len(e.Changes) > 0
}
