package mend

import (
	"garner/internal/outlook"
	"garner/internal/plan"
)

// stores are plantings that feed the row and whose crop could go to another of the
// household's stores than it does, or to one at all.
func (w *weighing) stores() []Proposal {
	var out []Proposal
	plantings, uses := w.feeding()
	for i, p := range plantings {
		for _, s := range w.holding.Stores {
			if s.ID == p.Store || !w.adviser.Keeps(uses[i], s.ID) {
				continue
			}
			stored := p
			stored.Store = s.ID
			out = append(out, Proposal{Kind: Store, Edit: outlook.Edit{Set: []plan.Planting{stored}}, Planting: stored, Was: p})
		}
	}
	return out
}
