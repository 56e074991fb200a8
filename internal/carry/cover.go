package carry

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/rotation"
)

// cover carries the covers that lie over beds for a time in this year to where
// their beds' sowings went. What lies there next year already is not laid twice.
func (c *carrier) cover() {
	taken := map[string]bool{}
	for _, spell := range c.Covers {
		taken[spell.ID] = true
	}
	for _, spell := range c.Covers {
		south := c.south[spell.Bed]
		year := rotation.GrowingYear(c.Today, south)
		if !spell.Off.IsSet() || rotation.GrowingYear(spell.On, south) != year {
			continue
		}
		if !c.carries(spell.Bed) {
			continue
		}
		by := weeksOn(year)
		next := spell
		next.On, next.Off = spell.On+by, spell.Off+by
		if bed, ok := c.went[spell.Bed]; ok {
			next.Bed = bed
		}
		if other := c.lies(&next); other != nil {
			if other.Kind != spell.Kind {
				c.out.Troubles = append(c.out.Troubles, Trouble{Kind: Covered, Carried: spell.ID, Bed: next.Bed})
			}
			continue
		}
		next.ID = nextID(spell.ID, next.On.Year(), taken)
		taken[next.ID] = true
		c.out.Covers = append(c.out.Covers, next)
	}
}

// carries tells whether a bed's covers are carried: unless all its sowings are
// planned already, with covers of their own.
func (c *carrier) carries(bed string) bool {
	return !c.plannedIn[bed] || slices.ContainsFunc(c.out.Sowings, func(s Carried) bool { return s.FromBed == bed })
}

// lies finds a cover that lies over the bed at the same time, nil when none does.
func (c *carrier) lies(s *place.CoverSpell) *place.CoverSpell {
	for _, list := range [][]place.CoverSpell{c.Covers, c.out.Covers} {
		for i := range list {
			o := &list[i]
			if o.Bed == s.Bed && o.On < s.Off && (!o.Off.IsSet() || s.On < o.Off) {
				return o
			}
		}
	}
	return nil
}

// Days are the first and last day of what was carried; both None when nothing was.
func (r *Result) Days() (first, last cal.Date) {
	first, last = cal.None, cal.None
	for i := range r.Sowings {
		d := r.Sowings[i].Date
		if !first.IsSet() || d < first {
			first = d
		}
		last = max(last, d)
	}
	return first, last
}
