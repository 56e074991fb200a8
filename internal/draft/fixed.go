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
	eaten := make([][][]float64, len(b.problem.Demands)) // by demand, future and week [kg]
	t := b.scales.Table
	for v := range t.Vegetables {
		d, wanted := b.draft.demands[t.Vegetables[v].Name]
		if !wanted {
			if d, wanted = b.groupRows[t.Vegetables[v].Name]; !wanted {
				continue
			}
		}
		if eaten[d] == nil {
			eaten[d] = make([][]float64, len(b.problem.Futures))
			for f := range eaten[d] {
				eaten[d][f] = make([]float64, b.Weeks)
			}
		}
		for f := range eaten[d] {
			c := &t.Vegetables[v].Years[f]
			fresh, stored := larder.Weekly(nil, c.Fresh, t.From), larder.Weekly(nil, c.Stored, t.From)
			for week := range fresh {
				eaten[d][f][week] += fresh[week] + stored[week]
			}
		}
	}
	for d := range eaten {
		b.fix(&b.problem.Demands[d], eaten[d])
	}
}

// fix gives a demand what is eaten of it as food of single weeks.
func (b *builder) fix(demand *programme.Demand, eaten [][]float64) {
	if eaten == nil {
		return
	}
	demand.Fixed = make([][]programme.Lot, len(eaten))
	for f := range eaten {
		for week := range eaten[f] {
			if kg := min(roundKg(eaten[f][week]), wanted(demand, week)); kg > 0 {
				demand.Fixed[f] = append(demand.Fixed[f], programme.Lot{First: week, Last: week, Kg: kg})
			}
		}
	}
}
