package web

import (
	"garner/internal/desk"
	"garner/internal/plan"
)

// misfitsOf says what an entry left that does not fit on its ground. What cannot
// be worked out is not told here; its own page tells why.
func (v *visit) misfitsOf(e *desk.KeptEntry) []string {
	var plantings, beds []string
	for _, c := range e.Changes {
		switch {
		case c.After == nil:
		case c.Table == "plantings":
			plantings = append(plantings, c.ID)
		case c.Table == "beds":
			beds = append(beds, c.ID)
		}
	}
	if len(plantings)+len(beds) > mostMisfits {
		return nil // a whole holding came in
	}
	return v.misfits(plantings, beds, nil)
}

// mostMisfits is how many rows an entry may change for what does not fit of them to
// be said with it.
const mostMisfits = 20

// misfits says what does not fit of plantings and beds, and how to mend it.
func (v *visit) misfits(plantings, beds []string, try []plan.Change) []string {
	wrong, err := v.office.Misfits(plantings, beds, try)
	if err != nil {
		return nil
	}
	var out []string
	for i := range wrong {
		out = append(out, v.sentence(wrong[i].Says)+" "+v.sentence(wrong[i].Mend))
	}
	return out
}
