package web

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/words"
)

// leaveBody is the way to leave a gap: one tap writes it, and another address
// shows first what it does.
type leaveBody struct {
	Value string // of the button
	Label string // for those who hear the page
	Try   string // the address that tries it
	Says  string // which gap, where several are told
	Mend  string // address of what would mend it
	Mends string // its label for those who hear the page
}

// leaveOf is the way to leave one gap of a vegetable.
func (v *visit) leaveOf(vegetable, plural, path string, today cal.Date, g *desk.GapView) *leaveBody {
	c := plan.Change{Action: desk.LeaveAction, Planting: vegetable, Field: g.First.String(), Value: desk.WriteSpan(g.First, g.Last)}
	args := words.Args{"vegetable": plural, "first": planned(g.First, today), "last": planned(g.Last, today)}
	span := "web.gap_leave_span"
	if g.Now {
		span = "web.gap_leave_span_now"
	}
	return &leaveBody{Value: writeChange(c), Label: v.say("web.gap_leave_label", args), Try: withTried(path, []plan.Change{c}),
		Says: v.sentence(words.P(span, args)),
		Mend: mendPath(vegetable, g.First, nil), Mends: v.say("web.gap_mend_label", args)}
}

// leftForm is a gap that is left.
var leftForm = rowForm{
	table: "gaps_left", nav: "wants", after: to("/wants"),
	fields: []fieldForm{{name: "vegetable", wide: true, choices: vegetableOrGroup}, {name: "from"}, {name: "to"}, {name: "group", more: true}},
}

// leftLines are the gaps left of a holding, each with the page that changes it;
// of one vegetable, or with an empty name of all.
func leftLines(h *holding.Holding, vegetable string) []rowLine {
	var out []rowLine
	for _, l := range h.GapsLeft {
		if name := wantedName(h, l.Vegetable, l.Group); vegetable == "" || name == vegetable {
			out = append(out, rowLine{Name: capital(name), Path: rowPath(&leftForm, l.ID) + "/edit",
				Says: words.P("web.left_says", words.Args{"first": l.From, "last": l.To})})
		}
	}
	return out
}
