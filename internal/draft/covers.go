package draft

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/place"
)

// warming is how long before the first sowing under it a cover goes on [d]. judgement:
// after a month the soil is as warm as it gets under it.
const warming = 28

// Covers are the spells over beds that a draft's rows are meant to stand under, in
// the order of beds and of days. Those over one bed that touch are one. A cover goes on
// a while before the first sowing under it, and comes off when the last is cleared.
func (d *Draft) Covers(rows []Row) []place.CoverSpell {
	var out []place.CoverSpell
	for i := range d.setting.Holding.Beds {
		var here []place.CoverSpell
		for _, s := range d.spellsOver(d.setting.Holding.Beds[i].ID, rows) {
			if n := len(here); n > 0 && here[n-1].Kind == s.Kind && s.On <= here[n-1].Off {
				here[n-1].Off = max(here[n-1].Off, s.Off)
				continue
			}
			here = append(here, s)
		}
		out = append(out, here...)
	}
	return named(out, d.setting.Holding.Covers)
}

// spellsOver are the spells of single rows of a bed, by the day on which they go on.
func (d *Draft) spellsOver(bed string, rows []Row) []place.CoverSpell {
	var out []place.CoverSpell
	for i := range rows {
		r := &rows[i]
		if r.Planting.Bed != bed || r.Under.Kind == "" {
			continue
		}
		s := place.CoverSpell{Bed: bed, Spell: r.Under}
		s.On = max(s.On, r.Planting.Date-warming)
		s.Off = min(s.Off, d.Columns[r.Parts[0].Sowing].Clear)
		out = append(out, s)
	}
	slices.SortStableFunc(out, func(a, b place.CoverSpell) int { return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.Off, b.Off)) })
	return out
}

// named gives covers ids that no other has.
func named(spells, others []place.CoverSpell) []place.CoverSpell {
	taken := map[string]bool{}
	for i := range others {
		taken[others[i].ID] = true
	}
	for i := range spells {
		s := &spells[i]
		stem := fmt.Sprintf("%s-%s-%02d", s.Bed, strings.ReplaceAll(string(s.Kind), " ", "-"), cal.Date(s.On).Year()%100)
		s.ID = stem
		for n := 2; taken[s.ID]; n++ {
			s.ID = fmt.Sprintf("%s-%d", stem, n)
		}
		taken[s.ID] = true
	}
	return spells
}
