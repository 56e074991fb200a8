package mend

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/labour"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/protect"
)

// proposed are the kinds of cover that are laid over a bed and taken off again;
// frames and tunnels are built.
var proposed = []cover.Kind{cover.Fleece, cover.LowTunnel}

// coverTime is a time of year over which a bed is covered, of the northern year; the
// south has it half a year later. judgement
type coverTime struct{ on, off cal.MonthDay }

var coverTimes = []coverTime{
	{cal.MonthDay{Month: 10, Day: 1}, cal.MonthDay{Month: 4, Day: 1}},  // what stands the winter
	{cal.MonthDay{Month: 2, Day: 15}, cal.MonthDay{Month: 5, Day: 1}},  // what is hurried on in spring
	{cal.MonthDay{Month: 9, Day: 10}, cal.MonthDay{Month: 12, Day: 1}}, // what is drawn out in autumn
}

// covers are covers over the beds that feed the row.
func (w *weighing) covers() []Proposal {
	var out []Proposal
	done := map[string]bool{}
	plantings, _ := w.feeding()
	for _, p := range plantings {
		if done[p.Bed] {
			continue
		}
		done[p.Bed] = true
		for _, kind := range proposed {
			for _, spell := range w.spells(p.Bed, kind) {
				helped := w.under(plantings, &spell)
				if helped == nil {
					continue
				}
				out = append(out, w.coverOf(*helped, spell))
			}
		}
	}
	return out
}

func (w *weighing) coverOf(p plan.Planting, s place.CoverSpell) Proposal {
	made := Proposal{Kind: Cover, Edit: outlook.Edit{Covers: []place.CoverSpell{s}}, Planting: p, Was: p, Spell: s}
	made.Takes.CoverM2 = w.areaOf(s.Bed)
	made.Takes.WorkH = labour.Cover() * made.Takes.CoverM2
	stock, err := protect.Count(w.holding.Gear, slices.Concat(w.holding.Covers, []place.CoverSpell{s}), w.holding.Beds, w.today)
	if err != nil {
		return made // the package's own tests read its data
	}
	for i := range stock.Short {
		if stock.Short[i].Spell == s.ID {
			made.Warning = &stock.Short[i].Phrase
		}
	}
	return made
}

// spells are the times in which a kind of cover could lie over a bed before the
// gap is over, clear of what lies there already.
func (w *weighing) spells(bed string, kind cover.Kind) []place.CoverSpell {
	var out []place.CoverSpell
	lying := place.CoversOf(w.holding.Covers, bed)
	for _, s := range coverTimes {
		for year := w.today.Year() - 1; year <= w.gap.Last.Year(); year++ {
			on, off := w.dayOf(s.on, year), w.dayOf(s.off, year)
			if off <= on {
				off = w.dayOf(s.off, year+1)
			}
			on = max(on, w.today)
			if off-on < leastDays || on > w.gap.Last-leastDays {
				continue
			}
			spell := place.CoverSpell{ID: "mend", Bed: bed, Spell: cover.Spell{Kind: kind, On: on, Off: off}}
			if cover.Check(append(spellsOf(lying), spell.Spell)) == nil {
				out = append(out, spell)
			}
		}
	}
	return out
}

// dayOf is a day of the northern year in a year, at the household's first site.
func (w *weighing) dayOf(d cal.MonthDay, year int) cal.Date {
	month := d.Month
	if w.southern() {
		if month += 6; month > 12 {
			month, year = month-12, year+1
		}
	}
	return cal.Of(year, month, d.Day)
}

func (w *weighing) southern() bool {
	return len(w.holding.Sites) > 0 && w.holding.Sites[0].Location.LatitudeDeg < 0
}

func spellsOf(list []place.CoverSpell) []cover.Spell {
	out := make([]cover.Spell, len(list), len(list)+1)
	for i := range list {
		out[i] = list[i].Spell
	}
	return out
}

// under is a planting that a cover would lie over for a while; nil when there is
// none.
func (w *weighing) under(plantings []plan.Planting, s *place.CoverSpell) *plan.Planting {
	bed := w.adviser.Ground.Bed(s.Bed)
	if bed == nil {
		return nil
	}
	for i := range plantings {
		p := &plantings[i]
		h := bed.Hold(p.ID)
		if p.Bed == s.Bed && h != nil && h.From < s.Off && (!h.Clear.P50.IsSet() || h.Clear.P50 > s.On) {
			return p
		}
	}
	return nil
}

// areaOf is the ground of a bed [m2].
func (w *weighing) areaOf(bed string) float64 {
	if b := w.adviser.Ground.Bed(bed); b != nil {
		return b.AreaM2
	}
	return 0
}
