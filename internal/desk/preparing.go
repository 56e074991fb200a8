package desk

import (
	"garner/internal/crop"
	"garner/internal/words"
)

// PreparingView is how things that need the same are made ready for a store.
type PreparingView struct {
	Names []string       // what is
	Steps []words.Phrase // sentences in order; the last says what is left to eat
}

// preparingOf is what is done with a crop before it is kept in a way, and what of it is
// left then; nothing when the book tells neither.
func preparingOf(b *crop.Book, id string, row *crop.Storage) []words.Phrase {
	var out []words.Phrase
	for _, p := range b.Preparing(id, row.Method) {
		out = append(out, stepSaid(&p))
	}
	if row.LossShare > 0 {
		out = append(out, words.P("desk.prepared_left", words.Args{"share": 1 - row.LossShare}))
	}
	return out
}

// stepSaid is a step of preparing as a sentence.
func stepSaid(p *crop.Preparing) words.Phrase {
	args := words.Args{"step": words.P("crop.prepare_"+p.Step, nil), "low": p.DaysFrom, "high": p.DaysTo, "from": p.FromC, "to": p.ToC}
	switch {
	case p.Timed() && p.Warmed():
		return words.P("desk.prepare_warm_days", args)
	case p.Timed() && p.DaysFrom == p.DaysTo:
		return words.P("desk.prepare_so_long", args)
	case p.Timed():
		return words.P("desk.prepare_days", args)
	}
	return words.P("desk.prepare", args)
}
