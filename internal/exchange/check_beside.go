package exchange

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// besideFaults finds ties between plantings that cannot be: rings, neighbours in
// another bed, and a moved planting that is not the other one. find gives a
// planting by its id, nil when there is none. tellRing says of which planting of
// a ring it is told.
func (c *checker) besideFaults(p *plan.Planting, find func(string) *plan.Planting, tellRing func(ring []string) bool) []inColumn {
	other := find(p.To)
	if p.To == "" || p.To == p.ID || other == nil {
		return nil
	}
	var out []inColumn
	wrong := func(column string, key string, args words.Args) {
		out = append(out, inColumn{column, fault.New(fault.Conflict, key, args)})
	}
	if ring := ringOf(p, find); ring != nil {
		if tellRing(ring) {
			wrong("to", "exchange.to_ring", words.Args{"planting": p.ID, "to": p.To})
		}
		return out
	}
	switch p.Relation {
	case plan.Under, plan.Between:
		if other.Bed != p.Bed {
			wrong("to", "exchange.to_other_bed", words.Args{"planting": p.ID, "to": p.To, "bed": c.bedName(p.Bed), "other": c.bedName(other.Bed)})
		}
	case plan.Moved:
		if other.Crop != p.Crop {
			wrong("crop", "exchange.moved_other_crop", words.Args{"planting": p.ID, "to": p.To, "crop": other.Crop})
		}
		if p.Date.IsSet() && other.Date.IsSet() && p.Date <= other.Date {
			wrong("date", "exchange.moved_before", words.Args{"planting": p.ID, "to": p.To, "date": other.Date.String()})
		}
	}
	return out
}

// ringOf returns the plantings whose ties come back to a planting, that one
// first; nil when they do not.
func ringOf(p *plan.Planting, find func(string) *plan.Planting) []string {
	ring := []string{p.ID}
	for at := find(p.To); at != nil && !slices.Contains(ring[1:], at.ID); at = find(at.To) {
		if at.ID == p.ID {
			return ring
		}
		ring = append(ring, at.ID)
	}
	return nil
}

// leastFirst tells of a ring at the planting whose id comes first, once.
func leastFirst(ring []string) bool { return ring[0] == slices.Min(ring) }

// always tells of a ring wherever it is met: a draft may touch any part of it.
func always([]string) bool { return true }

// warnAfter warns of a planting that follows one in another bed.
func (c *checker) warnAfter(row int, p *plan.Planting) {
	other := c.planting(p.To)
	if p.Relation == plan.After && other != nil && other.Bed != p.Bed {
		c.warnings.add(fault.New(fault.Conflict, "exchange.after_other_bed", words.Args{"planting": p.ID, "to": p.To,
			"bed": c.bedName(p.Bed), "other": c.bedName(other.Bed)}).In(c.place("plantings", row, "to")))
	}
}

// planting finds a row of plantings.csv by its id.
func (c *checker) planting(id string) *plan.Planting {
	if i, ok := c.ids["plantings"][id]; ok {
		return &c.h.Plantings[i]
	}
	return nil
}

// among finds plantings in a list by their ids.
func among(plantings []plan.Planting) func(string) *plan.Planting {
	at := make(map[string]*plan.Planting, len(plantings))
	for i := range plantings {
		at[plantings[i].ID] = &plantings[i]
	}
	return func(id string) *plan.Planting { return at[id] }
}

func (c *checker) bedName(id string) string {
	if i, ok := c.ids["beds"][id]; ok {
		return c.h.Beds[i].Name
	}
	return id
}
