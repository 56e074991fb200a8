package draft

import (
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/plan"
)

// kept are the plantings a draft leaves as they are: what is in the ground already,
// what that is moved to, perennials, and what is pinned.
func kept(s *Setting, all []plan.Planting) []plan.Planting {
	stays := map[string]bool{}
	for i := range all {
		p := &all[i]
		stays[p.ID] = p.Date <= s.Today || perennial(s.Book, p) || s.pinned(p.ID)
	}
	for more := true; more; {
		more = false
		for i := range all {
			p := &all[i]
			if p.Relation == plan.Moved && stays[p.To] && !stays[p.ID] {
				stays[p.ID], more = true, true
			}
		}
	}
	var out []plan.Planting
	for _, p := range all {
		if !stays[p.ID] {
			continue
		}
		if p.Relation != plan.Alone && !stays[p.To] {
			p.Relation, p.To = plan.Alone, ""
		}
		out = append(out, p)
	}
	return out
}

func perennial(b *crop.Book, p *plan.Planting) bool {
	c, ok := b.Crop(p.Crop)
	if !ok {
		return false
	}
	u, err := c.Use(p.Use)
	return err == nil && u.Pattern == crop.Perennial
}

// only is the holding with no other plantings than these.
func only(h *holding.Holding, plantings []plan.Planting) *holding.Holding {
	own := *h
	own.Plans, own.Changes = []plan.Plan{{ID: h.Plan}}, nil
	own.Plantings = make([]plan.Planting, len(plantings))
	for i, p := range plantings {
		p.Plan = h.Plan
		own.Plantings[i] = p
	}
	return &own
}
