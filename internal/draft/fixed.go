package draft

import (
	"garner/internal/larder"
	"garner/internal/programme"
)

// fixed gives each demand what the table eats in each week, future by future, when
// nothing more is sown: from what stands, what is stored and what is pinned. It is
// eaten when the table eats it, so that a problem without sowings costs what that
// table lacks.
func (b *builder) fixed() {
	t := b.scales.Table
	for v := range t.Vegetables {
		d, wanted := b.draft.demands[t.Vegetables[v].Name]
		if !wanted {
			continue
		}
		demand := &b.problem.Demands[d]
		demand.Fixed = make([][]programme.Lot, len(b.problem.Futures))
		for f := range demand.Fixed {
			c := &t.Vegetables[v].Years[f]
			fresh, stored := larder.Weekly(nil, c.Fresh, t.From), larder.Weekly(nil, c.Stored, t.From)
			for week := range fresh {
				if kg := roundKg(fresh[week] + stored[week]); kg > 0 {
					demand.Fixed[f] = append(demand.Fixed[f], programme.Lot{First: week, Last: week, Kg: min(kg, demand.Levels[0].PerWeek[week])})
				}
			}
		}
	}
}
