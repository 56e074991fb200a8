package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
)

// DraftPin is a planting still to come, which a draft may be told to leave.
type DraftPin struct {
	Planting, Name string
	Date           cal.Date
}

// DraftPins are the plantings of the plan in force that are still to come, in order
// of time.
func (o *Office) DraftPins() ([]DraftPin, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	var out []DraftPin
	for id, p := range n.plantings {
		if p.Date > a.setting.Today {
			out = append(out, DraftPin{id, n.planting(id), p.Date})
		}
	}
	slices.SortFunc(out, func(a, b DraftPin) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Planting, b.Planting))
	})
	return out, nil
}
