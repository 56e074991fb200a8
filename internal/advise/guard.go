package advise

import (
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
	"garner/internal/words"
)

// guarded tells what pests the covers of its bed would let at a planting.
func (a *Adviser) guarded(p *plan.Planting) []words.Phrase {
	b := protect.Bed{Book: a.book, Covers: place.CoversOf(a.holding.Covers, p.Bed), Records: a.holding.Records, South: !a.northern(p.Bed), Over: a.over}
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
