package advise

import (
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
	"garner/internal/words"
)

// guarded tells what pests the covers of its bed would let at a planting.
func (a *Adviser) guarded(p *plan.Planting) []words.Phrase {
	b := protect.Bed{Book: a.book, Records: a.holding.Records, Over: a.over}
	b.Covers = append([]place.CoverSpell(nil), coversOf(a.holding.Covers, p.Bed)...)
	for _, other := range a.scales.Plantings() {
		if other.Bed == p.Bed {
			b.Plantings = append(b.Plantings, other)
		}
	}
	b.Plantings = append(b.Plantings, *p)
	guards, err := protect.Guards(b, a.Today)
	if err != nil {
		return nil // the package's own tests read its data
	}
	for i := range guards {
		if guards[i].Planting == p.ID {
			return guards[i].Phrases
		}
	}
	return nil
}

func coversOf(all []place.CoverSpell, bed string) []place.CoverSpell {
	var out []place.CoverSpell
	for _, s := range all {
		if s.Bed == bed {
			out = append(out, s)
		}
	}
	return out
}
