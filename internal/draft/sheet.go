package draft

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/protect"
	"garner/internal/space"
)

// offered are the kinds of cover that a draft lays, those that keep warmest first.
// Mesh and nets keep out pests, which the season does not know.
var offered = []cover.Kind{cover.LowTunnel, cover.ColdFrame, cover.Cloche, cover.Fleece}

// The times of the northern year over which a bed may be covered, each overlapping
// the one before; the south has them half a year later. judgement, as for mending a
// gap: what is drawn out in autumn, what stands the winter, what is hurried on in spring.
var coverTimes = []struct{ on, off cal.MonthDay }{
	{cal.MonthDay{Month: 9, Day: 10}, cal.MonthDay{Month: 12, Day: 1}},
	{cal.MonthDay{Month: 10, Day: 1}, cal.MonthDay{Month: 4, Day: 1}},
	{cal.MonthDay{Month: 2, Day: 15}, cal.MonthDay{Month: 5, Day: 1}},
}

// leastCoverDays is how short a time a cover is laid for [d]. judgement.
const leastCoverDays = 28

// sheet is when a bed may be covered, and with what: the covers that the gear in
// stock reaches to, whatever else is covered. Of each cold season it has one kind.
type sheet []cover.Spell

func (s sheet) name() string {
	var out strings.Builder
	for _, spell := range s {
		fmt.Fprintf(&out, "/%s %s %s", spell.Kind, spell.On, spell.Off)
	}
	return out.String()
}

// reach finds the beds that the gear in stock can cover in each cold season of the
// problem, all of them at once and beside the covers that lie as planned; those in
// most light first. It is nothing when there is no gear.
func (b *builder) reach(g *space.Ground) (map[string]sheet, error) {
	out := map[string]sheet{}
	kinds, err := b.kindsOwned()
	if err != nil || len(kinds) == 0 {
		return out, err
	}
	beds := slices.Clone(b.Holding.Beds)
	slices.SortStableFunc(beds, func(a, c place.Bed) int { return cmp.Compare(c.Light, a.Light) })
	laid := slices.Clone(b.Holding.Covers)
	for year := b.Today.Year() - 1; year <= b.draft.monday(b.Weeks).Year(); year++ {
		covered := map[string]bool{}
		for _, kind := range kinds {
			for i := range beds {
				bed := &beds[i]
				if covered[bed.ID] || !b.idles(g, bed.ID, year) {
					continue
				}
				spells, over, err := b.fitting(bed.ID, kind, year, laid)
				if err != nil {
					return nil, err
				}
				if len(spells) > 0 {
					covered[bed.ID], laid = true, append(laid, over)
					out[bed.ID] = append(out[bed.ID], spells...)
				}
			}
		}
	}
	return out, nil
}

// Coverable are the spells for which the gear in stock reaches to a bed in each cold
// season of a setting, of every kind of cover, beside the covers that lie as planned:
// all that a draft may lay there, were the bed free and the first to be covered.
func Coverable(s outlook.Setting, bed string) ([]cover.Spell, error) {
	own := Setting{Setting: s}
	b := &builder{Setting: s, setting: &own, northern: northern(&own), draft: &Draft{setting: own}}
	kinds, err := b.kindsOwned()
	if err != nil {
		return nil, err
	}
	var out []cover.Spell
	for year := b.Today.Year() - 1; year <= b.draft.monday(b.Weeks).Year(); year++ {
		for _, kind := range kinds {
			spells, _, err := b.fitting(bed, kind, year, b.Holding.Covers)
			if err != nil {
				return nil, err
			}
			out = append(out, spells...)
		}
	}
	return out, nil
}

// UnderFrom and UnderUntil are the first and the last day on which a draft sows for a
// cover.
func UnderFrom(s cover.Spell) cal.Date { return s.On - 7*beforeCover }

// UnderUntil: see UnderFrom.
func UnderUntil(s cover.Spell) cal.Date { return s.Off - 7*coverEvery }

// kindsOwned are the kinds of cover that there is gear for.
func (b *builder) kindsOwned() ([]cover.Kind, error) {
	var out []cover.Kind
	for _, kind := range offered {
		takes, err := protect.Takes(kind)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(b.Holding.Gear, func(g place.Gear) bool { return g.Kind == takes && g.Pieces > 0 }) {
			out = append(out, kind)
		}
	}
	return out, nil
}

// idles tells whether some of a bed is free in a cold season.
func (b *builder) idles(g *space.Ground, bed string, year int) bool {
	its := g.Bed(bed)
	if its == nil {
		return false
	}
	on, off := b.dayOf(coverTimes[0].on, year), b.dayOf(coverTimes[len(coverTimes)-1].off, year+1)
	for _, gap := range its.Gaps(b.Today, g.Until) {
		first, last := b.weeksOf(&gap, its.TurnRoundD)
		if first <= last && b.draft.monday(first) < off && b.draft.monday(last+1) > on {
			return true
		}
	}
	return false
}

// fitting are the times of a cold season for which the gear reaches to a bed beside
// what is laid: the most of them that follow each other. The spell goes over all of
// them.
func (b *builder) fitting(bed string, kind cover.Kind, year int, laid []place.CoverSpell) ([]cover.Spell, place.CoverSpell, error) {
	times := b.timesOf(kind, year)
	before, err := protect.Count(b.Holding.Gear, laid, b.Holding.Beds, b.Today)
	if err != nil {
		return nil, place.CoverSpell{}, err
	}
	for n := len(times); n > 0; n-- {
		for from := 0; from+n <= len(times); from++ {
			part := times[from : from+n]
			over := place.CoverSpell{ID: fmt.Sprintf("draft/%s/%d", bed, year), Bed: bed, Spell: cover.Spell{Kind: kind, On: part[0].On, Off: part[n-1].Off}}
			all := append(slices.Clone(laid), over)
			if cover.Check(spellsOf(place.CoversOf(all, bed))) != nil {
				continue
			}
			after, err := protect.Count(b.Holding.Gear, all, b.Holding.Beds, b.Today)
			if err != nil {
				return nil, over, err
			}
			if len(after.Short) <= len(before.Short) {
				return part, over, nil
			}
		}
	}
	return nil, place.CoverSpell{}, nil
}

// timesOf are the times of a cold season that lie within the problem, from today on.
func (b *builder) timesOf(kind cover.Kind, year int) []cover.Spell {
	var out []cover.Spell
	for _, t := range coverTimes {
		on := b.dayOf(t.on, year)
		if t.on.Month < coverTimes[0].on.Month {
			on = b.dayOf(t.on, year+1)
		}
		off := b.dayOf(t.off, year)
		if off <= on {
			off = b.dayOf(t.off, year+1)
		}
		on = max(on, b.Today)
		if off-on >= leastCoverDays && on <= b.draft.monday(b.Weeks)-leastCoverDays {
			out = append(out, cover.Spell{Kind: kind, On: on, Off: off})
		}
	}
	return out
}

// dayOf is a day of the northern year that begins in a year.
func (b *builder) dayOf(d cal.MonthDay, year int) cal.Date {
	month := d.Month
	if !b.northern {
		if month += 6; month > 12 {
			month, year = month-12, year+1
		}
	}
	return cal.Of(year, month, d.Day)
}

func spellsOf(list []place.CoverSpell) []cover.Spell {
	out := make([]cover.Spell, len(list))
	for i := range list {
		out[i] = list[i].Spell
	}
	return out
}
