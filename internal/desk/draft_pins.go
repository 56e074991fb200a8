package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/plan"
)

// DraftPin is a planting that a draft may be told to leave.
type DraftPin struct {
	Planting, Name string
	Date           cal.Date // None: the plan in force no longer has it
}

// DraftPins are the plantings of the plan in force that are still to come, and those
// that are wished to stay, in order of time.
func (o *Office) DraftPins() ([]DraftPin, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	var out []DraftPin
	wished := map[string]bool{}
	for _, w := range a.holding.Wishes {
		if w.Kind != plan.Pin {
			continue
		}
		wished[w.Planting] = true
		if _, there := n.plantings[w.Planting]; !there {
			out = append(out, DraftPin{w.Planting, w.Planting, cal.None})
		}
	}
	for id, p := range n.plantings {
		if p.Date > a.setting.Today || wished[id] {
			out = append(out, DraftPin{id, n.planting(id), p.Date})
		}
	}
	slices.SortFunc(out, func(a, b DraftPin) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Planting, b.Planting))
	})
	return out, nil
}
