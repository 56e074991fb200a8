package carry

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/rotation"
)

// weeksOn is the days from a week of one ISO 8601 year to that of the next: 364, or
// 371 where the year has 53 weeks.
func weeksOn(year int) cal.Date { return firstMonday(year+1) - firstMonday(year) }

// firstMonday begins the first ISO 8601 week of a year: the one with 4 January.
func firstMonday(year int) cal.Date { return cal.Of(year, 1, 4).Monday() }

// alikeWithin is how near a sowing that is planned already must lie to be taken for
// one that would be carried [d]. judgement: successions of salad follow each other
// at two to four weeks.
const alikeWithin = 14

// choose finds this year's sowings and moves their days, in order of time.
func (c *carrier) choose() {
	for i := range c.Plantings {
		p := &c.Plantings[i]
		switch {
		case !c.thisYear(p) || c.stays(p):
		case c.Leave[p.ID]:
			c.out.Left = append(c.out.Left, p.ID)
		default:
			c.out.Sowings = append(c.out.Sowings, c.moved(p, c.begun(p), weeksOn(rotation.GrowingYear(c.Today, c.south[p.Bed]))))
		}
	}
	slices.SortStableFunc(c.out.Sowings, func(a, b Carried) int { return cmp.Compare(a.Date, b.Date) })
	c.dropPlanned()
	c.name()
}

// thisYear tells whether a planting went in, or is to, in the growing year that is
// carried.
func (c *carrier) thisYear(p *plan.Planting) bool {
	south := c.south[p.Bed]
	return rotation.GrowingYear(c.begun(p), south) == rotation.GrowingYear(c.Today, south)
}

// begun is the day a planting went in: as recorded, else as planned.
func (c *carrier) begun(p *plan.Planting) cal.Date {
	if day, ok := c.planted[p.ID]; ok {
		return day
	}
	return p.Date
}

// stays tells whether a planting stays year after year.
func (c *carrier) stays(p *plan.Planting) bool {
	its, ok := c.Book.Crop(p.Crop)
	if !ok {
		return false
	}
	u, err := its.Use(p.Use)
	return err == nil && u.Pattern == crop.Perennial
}

// moved is a planting with its days in the next year.
func (c *carrier) moved(p *plan.Planting, begun, by cal.Date) Carried {
	n := Carried{Planting: *p, From: p.ID, FromBed: p.Bed, LaterD: int(begun - p.Date)}
	n.Plan, n.Date = c.Draft, begun+by
	n.ClearBy, n.StripOn = later(p.ClearBy, by), later(p.StripOn, by)
	if n.ClearBy.IsSet() && n.ClearBy <= n.Date {
		n.ClearBy += begun - p.Date
	}
	if n.StripOn.IsSet() && n.StripOn <= n.Date {
		n.StripOn += begun - p.Date
	}
	return n
}

func later(d, by cal.Date) cal.Date {
	if !d.IsSet() {
		return d
	}
	return d + by
}

// dropPlanned leaves out what next year has already: each planting that is planned
// stands for the nearest sowing of its crop and use within alikeWithin days.
func (c *carrier) dropPlanned() {
	var kept []Carried
	stands := map[string]bool{}
	for _, s := range c.out.Sowings {
		var nearest *plan.Planting
		for i := range c.Plantings {
			p := &c.Plantings[i]
			if p.Crop == s.Crop && p.Use == s.Use && !c.thisYear(p) && !stands[p.ID] && apart(p, &s) <= alikeWithin &&
				(nearest == nil || apart(p, &s) < apart(nearest, &s)) {
				nearest = p
			}
		}
		if nearest == nil {
			kept = append(kept, s)
			continue
		}
		stands[nearest.ID] = true
		c.out.Planned = append(c.out.Planned, s.From)
		c.plannedIn[s.FromBed] = true
	}
	c.out.Sowings = kept
}

func apart(p *plan.Planting, s *Carried) int {
	if d := int(p.Date - s.Date); d >= 0 {
		return d
	}
	return int(s.Date - p.Date)
}

// name gives the sowings ids of their own, and lets them stand by each other as
// those they were made from did. One whose neighbour is not carried stands alone,
// unless it is a perennial.
func (c *carrier) name() {
	taken := map[string]bool{}
	for id := range c.Taken {
		taken[id] = true
	}
	perennial := map[string]bool{}
	for i := range c.Plantings {
		taken[c.Plantings[i].ID] = true
		perennial[c.Plantings[i].ID] = c.stays(&c.Plantings[i])
	}
	made := map[string]string{}
	for i := range c.out.Sowings {
		s := &c.out.Sowings[i]
		s.ID = nextID(s.From, s.Date.Year(), taken)
		taken[s.ID], made[s.From] = true, s.ID
	}
	for i := range c.out.Sowings {
		s := &c.out.Sowings[i]
		if perennial[s.To] {
			c.host[s.ID] = s.FromBed
			continue
		}
		if s.To = made[s.To]; s.To == "" {
			s.Relation = plan.Alone
		}
	}
}

// nextID is the id of a planting with its year made the next: let-27c becomes
// let-28c.
func nextID(id string, year int, taken map[string]bool) string {
	now, next := "-"+twoDigits(year-1), "-"+twoDigits(year)
	stem := id + next
	if at := strings.LastIndex(id, now); at >= 0 {
		stem = id[:at] + next + id[at+len(now):]
	}
	made := stem
	for n := 2; taken[made]; n++ {
		made = stem + "-" + strconv.Itoa(n)
	}
	return made
}

func twoDigits(year int) string { return strconv.Itoa(100 + year%100)[1:] }

// plantedOn are the days on which plantings went in by the records.
func plantedOn(records []record.Record) map[string]cal.Date {
	out := map[string]cal.Date{}
	for _, r := range records {
		if r.What == record.Planted && r.Planting != "" {
			out[r.Planting] = r.Date
		}
	}
	return out
}
