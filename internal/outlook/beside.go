package outlook

import "garner/internal/plan"

// How much of a planting's ground meets its neighbour's leaves.
//
// judgement: an under-crop is spread over all of the ground, and what of it does
// not stand beneath leaves stands in the gaps (canopy.Gaps). Rows between rows
// are set into the gaps, as far as there are any, and meet half of the leaves.
const (
	UnderShare   = 0.8 // 1 - canopy.Gaps
	BetweenShare = 0.5
)

// pair ties plantings that stand under or between others.
func (w *bedWork) pair() {
	at := map[string]int{}
	for i := range w.plantings {
		at[w.plantings[i].ID] = i
	}
	for i := range w.plantings {
		p := &w.plantings[i]
		k, known := at[p.To]
		if !known || k == i {
			continue
		}
		switch p.Relation {
		case plan.Under:
			w.bed.Plantings[i].Shares, w.bed.Plantings[i].Beneath = k, UnderShare
		case plan.Between:
			w.bed.Plantings[i].Shares, w.bed.Plantings[i].Beneath = k, BetweenShare
		}
	}
}
