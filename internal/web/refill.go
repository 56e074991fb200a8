package web

import (
	"maps"
	"slices"

	"garner/internal/desk"
	"garner/internal/words"
)

// refillBody is what could fill a hole.
type refillBody struct {
	Lines []refillLine
	Next  string // page of all that could follow
}

// refillLine is one crop that could fill it, to be accepted with one tap.
type refillLine struct {
	Name   string
	Says   string
	Path   string // that the form is sent to
	Hidden []hiddenField
}

// mostRefills is how many are offered; all are on the page of the bed.
const mostRefills = 6

// refills says what could fill the ground that an entry freed.
func (v *visit) refills(planting, entry string, f *desk.FreedView) (*refillBody, error) {
	view, err := v.office.HoleRefills(f)
	if faults := listOf(err); faults != nil {
		return &refillBody{}, nil // it is free too late or too short
	}
	if err != nil || view == nil {
		return &refillBody{}, err
	}
	b := &refillBody{Next: nextPath(f.Bed, f.From, view.AreaM2)}
	for i := range view.Candidates[:min(len(view.Candidates), mostRefills)] {
		line, err := v.refillLine(&view.Candidates[i], planting, entry)
		if err != nil {
			return nil, err
		}
		b.Lines = append(b.Lines, line)
	}
	return b, nil
}

func (v *visit) refillLine(c *desk.CandidateView, planting, entry string) (refillLine, error) {
	today, err := v.office.Today()
	if err != nil {
		return refillLine{}, err
	}
	how := "web.refill_sown"
	if c.Method != "seed" {
		how = "web.refill_planted"
	}
	line := refillLine{Name: capital(c.Name), Path: plantingPath(planting) + "/accept"}
	line.Says = v.say(how, words.Args{"date": c.Date, "area": c.AreaM2, "kg": c.DropKg}) + " " + v.sentence(sharpened(c.Reason, today))
	if c.Lot != nil {
		line.Says += " " + v.say("web.refill_on_hand", nil)
	}
	if c.Late {
		line.Says += " " + v.say("web.refill_late", nil)
	}
	if c.Clash != nil {
		line.Says += " " + v.sentence(sharpened(*c.Clash, today))
	}
	own, err := v.entry()
	if err != nil {
		return refillLine{}, err
	}
	line.Hidden = []hiddenField{{"entry", own}, {"hole", entry}}
	for _, name := range slices.Sorted(maps.Keys(c.Cells)) {
		if value := c.Cells[name]; value != "" {
			line.Hidden = append(line.Hidden, hiddenField{cellField + name, value})
		}
	}
	return line, nil
}

// cellField begins the names of the fields that hold a candidate's cells.
const cellField = "cell-"

// refillAccepted makes a candidate a planting, and shows what is left of the hole.
func refillAccepted(v *visit) error {
	cells := map[string]string{}
	for name, values := range v.r.PostForm {
		if len(name) > len(cellField) && name[:len(cellField)] == cellField && len(values) > 0 {
			cells[name[len(cellField):]] = values[0]
		}
	}
	kept, err := v.office.Accept(v.author(), cells)
	if err != nil {
		return err
	}
	v.kept(kept, holePath(v.r.PathValue("id"), v.field("hole")))
	return nil
}
