package draft

import (
	"fmt"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/labour"
	"garner/internal/programme"
)

// sowings makes the columns: for every class of ground, every profile of its kind
// that fits into its weeks and is not barred there.
func (b *builder) sowings(hours int) error {
	return b.eachUse(func(c *crop.Crop, u *crop.Use) error {
		b.keepings[u] = b.keepingOf(u)
		for k := range b.kinds {
			if b.kinds[k].last < b.kinds[k].first {
				continue
			}
			all, err := b.profiles(&b.kinds[k], c, u)
			if err != nil {
				return err
			}
			under := map[cover.Spell][]profile{}
			for class := range b.draft.Classes {
				its := &b.draft.Classes[class]
				if its.kind != k {
					continue
				}
				own := all[:len(all):len(all)]
				for _, spell := range its.sheet {
					covered, known := under[spell]
					if !known {
						if covered, err = b.under(&b.kinds[k], spell, c, u, all); err != nil {
							return err
						}
						under[spell] = covered
					}
					own = append(own, covered...)
				}
				b.fit(class, own, hours)
			}
		}
		return nil
	})
}

// fit takes over the profiles that fit into a class and are not dominated there.
func (b *builder) fit(class int, all []profile, hours int) {
	g, c := &b.problem.Grounds[class], &b.draft.Classes[class]
	var fits []profile
	classes := b.stride()
	for i := range all {
		p := &all[i]
		stride := classes * apart(b.lastWeek(p, c.turn)+1-p.week)
		turn := p.week
		if p.under.Kind != "" {
			turn /= coverEvery
		}
		if turn%stride == class%stride && p.week >= g.First && b.lastWeek(p, c.turn) <= g.Last && !c.bars.at(p.use, p.week) {
			fits = append(fits, *p)
		}
	}
	for i := range fits {
		if !dominated(fits, i) {
			b.sowing(class, &fits[i], hours)
		}
	}
}

// fewClasses is how many classes of ground have columns for every week.
// judgement: a garden in which no two beds are alike has as many columns as one of
// so many like fields.
const fewClasses = 12

// stride is how many weeks lie between the sowings of a class; the classes take turns,
// so that every week is some class's.
func (b *builder) stride() int {
	return (len(b.problem.Grounds) + fewClasses - 1) / fewClasses
}

// apart is how many weeks lie between the sowings of a crop that holds its ground for
// so many weeks. judgement: the weather moves the end of a crop of half a year by
// weeks, so that sowings one week apart are the same to the table.
func apart(weeks int) int {
	switch {
	case weeks <= 24:
		return 2
	}
	return 3
}

// lastWeek is the last week in which a sowing holds its ground, the turn-round
// included.
func (b *builder) lastWeek(p *profile, turn int) int {
	return min(b.Weeks-1, max(p.week, (p.free+turn-1)/7))
}

func (b *builder) sowing(class int, p *profile, hours int) {
	m2 := b.draft.Classes[class].UnitM2
	stock := b.ownStock(p.use, p.method)
	lots := make([][]programme.Lot, len(p.lots))
	for f, own := range heldBack(p.lots, stock) {
		lots[f] = merged(own, m2)
	}
	last := b.lastWeek(p, b.draft.Classes[class].turn)
	work := labour.Garden() / weeksYear * m2 // a week [h]
	s := programme.Sowing{
		ID:     fmt.Sprintf("%s/%s/%s/%d/%d/%d", p.crop.ID, p.use.Name, p.method, class+1, p.week, last),
		Ground: class, First: p.week, Last: last, Demand: b.draft.demands[p.use.Vegetable], Lots: lots,
		Uses: b.roomOf(p, lots), Cost: roundCost(work * float64(last+1-p.week) * hourCost), Most: b.problem.Grounds[class].Units,
	}
	column := Column{Crop: p.crop, Use: p.use, Method: p.method, Date: b.draft.monday(p.week), Clear: b.From + cal.Date(p.free), Odds: p.odds, Under: p.under, OwnStock: stock > 0}
	if p.store != nil {
		s.ID += "/" + p.store.store
		column.Store = p.store.store
	}
	s.Uses = append(s.Uses, b.preparing(p, lots)...)
	if p.under.Kind != "" {
		s.ID += fmt.Sprintf("/%s %s", p.under.Kind, p.under.On)
		s.Cost = roundCost(s.Cost + layingHours(m2)*hourCost)
		if on := max(0, int(p.under.On-b.From)/7); hours != noHours {
			s.Uses = append(s.Uses, programme.Use{Resource: hours, Week: on, Amount: roundCost(layingHours(m2))})
		}
	}
	if hours != noHours {
		for week := p.week; week <= last; week++ {
			s.Uses = append(s.Uses, programme.Use{Resource: hours, Week: week, Amount: roundCost(work)})
		}
	}
	b.problem.Sowings = append(b.problem.Sowings, s)
	b.draft.Columns = append(b.draft.Columns, column)
}

// merged are the lots of some ground [m2], those that are good in the same weeks as
// one.
func merged(lots []programme.Lot, m2 float64) []programme.Lot {
	var out []programme.Lot
next:
	for _, l := range lots {
		l.Kg *= m2
		for i := range out {
			if out[i].First == l.First && out[i].Last == l.Last {
				out[i].Kg += l.Kg
				continue next
			}
		}
		out = append(out, l)
	}
	kept := out[:0]
	for _, l := range out {
		if l.Kg = roundKg(l.Kg); l.Kg > 0 {
			kept = append(kept, l)
		}
	}
	return kept
}
