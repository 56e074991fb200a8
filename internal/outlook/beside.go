package outlook

import "garner/internal/plan"

// How much of a planting's ground meets its neighbour's leaves.
//
// judgement: an under-crop stands in the gaps that plants with their full room
// leave, between the stems and not at them. Row crops never close over all of
// their ground (FAO AquaCrop gives tomato a cover of 0.75 at most), and bulb onions
// caught 69 % of the light at a leaf area of 3.7 (Brewster 2008, Table 4.2) where
// leaves without gaps would catch 84 %. Rows between rows meet half of them.
const (
	UnderShare   = 0.8
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
