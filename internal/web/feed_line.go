package web

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// feedLine is a planting's turn with the form that records it.
type feedLine struct {
	*desk.FeedRow
	Name, Path, Says string
	Now              bool
	Hidden           []hiddenField
}

func (v *visit) feedLine(view *desk.FeedView, f *desk.FeedRow) (feedLine, error) {
	entry, err := v.entry()
	line := feedLine{FeedRow: f, Name: capital(f.What) + ", " + f.BedName, Path: plantingPath(f.Planting), Now: f.Due <= view.Today,
		Hidden: []hiddenField{{"entry", entry}, {"planting", f.Planting}}}
	args := words.Args{"l": f.Litres, "m2": f.M2, "n": f.EveryD, "due": f.Due, "why": words.P("web.feed_why_"+f.Why, nil),
		"how": feedHow(view, f), "again": feedAgain(view, f)}
	key := "web.feed_line_later"
	switch {
	case !view.Wanted:
		key = "web.feed_line_plain"
	case line.Now:
		key = "web.feed_line_now"
	}
	line.Says = v.say(key, args)
	if f.Last != nil {
		key := "web.feed_last"
		if f.LastDry {
			key = "web.feed_last_dry"
		}
		line.Says += " " + v.say(key, words.Args{"on": *f.Last})
	}
	return line, err
}

// feedHow tells how much of which feed: to a can where it takes one or more.
func feedHow(view *desk.FeedView, f *desk.FeedRow) words.Phrase {
	args := words.Args{"l": f.Litres, "m2": f.M2, "ml": f.MLPerCan, "all": f.ML, "g": f.DryG}
	if !view.Liquid {
		return words.P("web.feed_how_dry", args)
	}
	liquid := words.P("web.feed_how_cans", args)
	if f.Litres < view.CanL {
		liquid = words.P("web.feed_how_some", args)
	}
	if !view.Dry {
		return liquid
	}
	args["liquid"] = liquid
	return words.P("web.feed_how_either", args)
}

// feedAgain tells after which time it is fed again.
func feedAgain(view *desk.FeedView, f *desk.FeedRow) words.Phrase {
	args := words.Args{"n": f.EveryD, "dry": f.DryEvery}
	switch {
	case view.Liquid && view.Dry:
		return words.P("web.feed_again_either", args)
	case view.Dry:
		return words.P("web.feed_again_dry", args)
	}
	return words.P("web.feed_again_wet", args)
}
