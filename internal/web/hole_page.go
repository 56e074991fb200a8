package web

import (
	"net/url"
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// holeBody is what an entry took from the table.
type holeBody struct {
	Name  string
	Path  string // of the planting
	Lines []holeLine
	Freed string // what ground came free; empty: none
	Next  string // page of what could follow on it
	Bed   string // page of that bed
}

// holeLine is what lacks of one vegetable.
type holeLine struct{ Text, Path string }

// holePage shows the hole at the table after something went wrong. When the entry
// was taken back there is none, and it leads to the planting.
func holePage(v *visit) error {
	id := v.r.PathValue("id")
	view, err := v.office.Hole(v.query("entry"), id)
	if fault.KindOf(err) == fault.Conflict && err != nil {
		v.moveTo(plantingPath(id) + keptAgain(v.query(keptQuery)))
		return nil
	}
	if err != nil {
		return err
	}
	loss, err := v.office.LossView(id)
	if err != nil {
		return err
	}
	return v.show(page{Name: "hole", Nav: "plantings", Body: v.holeBody(view, loss)})
}

// keptAgain tells on the next page what this one was to tell.
func keptAgain(entry string) string {
	if entry == "" {
		return ""
	}
	return "?" + keptQuery + "=" + url.QueryEscape(entry)
}

func (v *visit) holeBody(view *desk.HoleView, loss *desk.LossView) *holeBody {
	b := &holeBody{Name: capital(loss.Name), Path: plantingPath(loss.Planting)}
	for _, g := range view.Gaps {
		args := words.Args{"vegetable": g.Plural, "weeks": g.Weeks, "first": words.Sharp(g.First, loss.Today),
			"last": words.Sharp(g.Last, loss.Today), "kg": g.Kg}
		b.Lines = append(b.Lines, holeLine{v.sentence(words.P("web.hole_gap", args)), vegetablePath(g.Vegetable)})
	}
	for _, l := range view.Less {
		args := words.Args{"vegetable": l.Plural, "kg": l.Kg}
		b.Lines = append(b.Lines, holeLine{v.sentence(words.P("web.hole_less", args)), vegetablePath(l.Vegetable)})
	}
	if f := view.Freed; f != nil {
		b.Freed = v.say("web.hole_freed", words.Args{"area": f.AreaM2, "bed": f.BedName, "from": f.From})
		b.Next, b.Bed = nextPath(f.Bed, f.From, f.AreaM2), bedPath(f.Bed)
	}
	return b
}

// nextPath is the page of what could follow on free ground of a bed.
func nextPath(bed string, from cal.Date, areaM2 float64) string {
	q := url.Values{"from": {from.String()}, "area": {strconv.FormatFloat(areaM2, 'f', -1, 64)}}
	return bedPath(bed) + "/next?" + q.Encode()
}
