package draft

import (
	"garner/internal/crop"
	"garner/internal/plan"
	"garner/internal/programme"
)

// owed adds to what is wanted the planting stock of kept plantings that nothing kept
// gives: as much of the vegetable in the week of planting, at the cost of what is held
// to most. Stock that what is kept gives is held back in its table already.
func (b *builder) owed() {
	for i := range b.draft.Kept {
		p := &b.draft.Kept[i]
		claim, claims := b.scales.Table.StockClaim(p.ID)
		week := int(p.Date-b.From) / 7
		if !claims || !(claim.Short > 0) || p.Date < b.From || week >= b.Weeks {
			continue
		}
		u := b.useOf(p)
		if u == nil {
			continue
		}
		if d, wanted := b.draft.demands[u.Vegetable]; wanted {
			weeks := b.problem.Demands[d].Levels[0].PerWeek
			weeks[week] = roundKg(weeks[week] + claim.Short)
		}
	}
}

func (b *builder) useOf(p *plan.Planting) *crop.Use {
	c, known := b.Book.Crop(p.Crop)
	if !known {
		return nil
	}
	u, err := c.Use(p.Use)
	if err != nil {
		return nil
	}
	return u
}

// ownStock is what a square metre of a start of a use takes of its own harvest to be
// planted again [kg]; 0 where the plan does not plant it from the household's store.
func (b *builder) ownStock(u *crop.Use, method plan.Method) float64 {
	for i := range b.draft.present {
		p := &b.draft.present[i]
		same := p.Method == method || p.Method == "" && len(u.Methods) > 0 && u.Methods[0] == string(method)
		if p.Stock == plan.OwnStock && same && b.useOf(p) == u {
			return u.StockKg(string(method), 1)
		}
	}
	return 0
}

// heldBack are lots of a square metre less what is held back to plant as much again.
func heldBack(lots [][]programme.Lot, kg float64) [][]programme.Lot {
	all := meanKg(lots)
	if !(kg > 0) || !(all > 0) {
		return lots
	}
	share := max(0, 1-kg/all)
	out := make([][]programme.Lot, len(lots))
	for f := range lots {
		for _, l := range lots[f] {
			l.Kg *= share
			out[f] = append(out[f], l)
		}
	}
	return out
}
