package desk

import (
	"garner/internal/crop"
	"garner/internal/record"
	"garner/internal/rotation"
	"garner/internal/words"
)

// CauseView is something that plants are lost to.
type CauseView struct {
	ID    string // of a problem of the rotation facts when it stays in the ground
	Name  words.Phrase
	Stays bool // it stays in the ground, and is noted for the bed
}

// causesOf lists what a crop can be lost to: what strikes every crop, then the
// diseases and pests of the ground that it is a host of, then all others.
func causesOf(c *crop.Crop) []CauseView {
	var out []CauseView
	for _, id := range record.PlainCauses() {
		out = append(out, CauseView{ID: id, Name: words.P("desk.cause_"+id, nil)})
	}
	for _, p := range rotation.Problems() {
		if c != nil && p.Strikes(c) {
			out = append(out, CauseView{ID: p.ID, Name: problemName(p), Stays: true})
		}
	}
	return append(out, CauseView{ID: record.OtherCause, Name: words.P("desk.cause_"+record.OtherCause, nil)})
}

func problemName(p rotation.Problem) words.Phrase {
	return words.P("desk.cause_problem", words.Args{"name": p.Name})
}

// causeFor finds a cause by its id: of the closed list, or any problem that
// stays in the ground, whatever the crop.
func causeFor(id string) (CauseView, bool) {
	if record.Plain(id) {
		return CauseView{ID: id, Name: words.P("desk.cause_"+id, nil)}, true
	}
	if p, _, ok := rotation.Find(id); ok {
		return CauseView{ID: p.ID, Name: problemName(p), Stays: true}, true
	}
	return CauseView{}, false
}
