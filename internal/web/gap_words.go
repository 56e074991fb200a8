package web

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// rowWords says what a row of the table shows: its next gap with the good and
// the poor year, or what the desk says when none is likely. The second half may
// be left away where there is no room.
func rowWords(v *desk.RibbonView, today cal.Date) (first words.Phrase, more *words.Phrase) {
	g := v.Gap
	if g == nil {
		return sharpened(v.Sentence, today), nil
	}
	key := "web.table_short"
	if g.Now {
		key = "web.table_short_now"
	}
	args := words.Args{"weeks": g.Weeks, "first": words.Sharp(g.First, today)}
	if g.Poor > g.Weeks { // else it is told already
		rest := words.P("web.table_short_poor", words.Args{"poor": g.Poor})
		more = &rest
	}
	if g.Good >= g.Weeks { // at best as long as it is told already
		key = map[bool]string{true: "web.table_short_now_sure", false: "web.table_short_sure"}[g.Now]
		return words.P(key, args), more
	}
	args["range"] = bestWords(g)
	return words.P(key, args), more
}

// bestWords says how short a gap is in the good year of ten.
func bestWords(g *desk.GapView) words.Phrase {
	if g.Good == 0 {
		return words.P("web.table_best_none", nil)
	}
	return words.P("web.table_best", words.Args{"good": g.Good})
}

// gapWords tells a gap of one vegetable: from when until when, how often, and
// how much lacks. One that every year has is told without its range.
func gapWords(g *desk.GapView, today cal.Date) words.Phrase {
	args := words.Args{"first": words.Sharp(g.First, today), "last": words.Sharp(g.Last, today), "weeks": g.Weeks,
		"chance": g.Chance, "lacks": g.Lacks, "good": g.Good, "poor": g.Poor}
	key := "web.vegetable_gap"
	if g.Now {
		key = "web.vegetable_gap_now"
	}
	if g.Good >= g.Weeks && g.Poor <= g.Weeks {
		key += "_sure"
	}
	return words.P(key, args)
}

// laterGapWords tells a gap that comes after another in short.
func laterGapWords(g *desk.GapView, today cal.Date) words.Phrase {
	return words.P("web.vegetable_gap_later", words.Args{"first": words.Sharp(g.First, today), "last": words.Sharp(g.Last, today),
		"weeks": g.Weeks, "chance": g.Chance})
}
