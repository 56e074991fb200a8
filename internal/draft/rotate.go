package draft

import (
	"fmt"

	"garner/internal/programme"
)

// rotate holds families that should not come back for a year or more down to the
// units of their ground within the problem, so that each unit has them once.
func (b *builder) rotate() {
	type course struct {
		ground int
		family string
	}
	terms := map[course][]programme.Term{}
	var order []course
	for j := range b.draft.Columns {
		u := b.draft.Columns[j].Use
		if u.RotationYears < 1 || u.Family == "" {
			continue
		}
		at := course{b.problem.Sowings[j].Ground, u.Family}
		if terms[at] == nil {
			order = append(order, at)
		}
		terms[at] = append(terms[at], programme.Term{Sowing: j, Weight: 1})
	}
	for _, at := range order {
		g := &b.problem.Grounds[at.ground]
		b.problem.Limits = append(b.problem.Limits, programme.Limit{ID: fmt.Sprintf("%s/%s", g.ID, at.family), Terms: terms[at], Most: float64(g.Units)})
	}
}
