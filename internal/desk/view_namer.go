package desk

import (
	"strings"

	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
)

// namer says plantings, beds and batches in words.
type namer struct {
	a         *asked
	beds      map[string]place.Bed
	varieties map[string]crop.Variety
	plantings map[string]plan.Planting
}

func newNamer(a *asked) *namer {
	n := &namer{a: a, beds: map[string]place.Bed{}, varieties: map[string]crop.Variety{}, plantings: map[string]plan.Planting{}}
	for _, b := range a.holding.Beds {
		n.beds[b.ID] = b
	}
	for _, v := range a.holding.Varieties {
		n.varieties[v.ID] = v
	}
	resolved, _ := plan.Resolve(a.holding.Plans, a.holding.Plantings, a.holding.Changes, a.holding.Plan)
	for _, p := range resolved {
		n.plantings[p.ID] = p
	}
	return n
}

func (n *namer) bed(id string) string {
	if b, ok := n.beds[id]; ok && b.Name != "" {
		return b.Name
	}
	return id
}

// planting names a planting by what it is, its variety and its bed.
func (n *namer) planting(id string) string {
	p := n.plantings[id]
	parts := []string{n.use(p.Crop, p.Use)}
	if v, ok := n.varieties[p.Variety]; ok {
		parts = append(parts, v.Name)
	}
	return strings.Join(append(parts, n.bed(p.Bed)), ", ")
}

func (n *namer) use(cropID, use string) string {
	c, ok := n.a.setting.Book.Crop(cropID)
	if !ok {
		return cropID
	}
	if u, err := c.Use(use); err == nil && u.Label != "" {
		return u.Label
	}
	return c.Plural
}

func (n *namer) store(id string) string {
	for _, s := range n.a.holding.Stores {
		if s.ID == id && s.Name != "" {
			return s.Name
		}
	}
	return id
}

func (n *namer) batch(id string) string {
	for _, b := range n.a.holding.Batches {
		if b.ID == id {
			return n.use(b.Crop, b.Use) + ", " + n.store(b.Store)
		}
	}
	return id
}

// feeds tells whether a planting gives food, which a green manure does not.
func (n *namer) feeds(cropID, use string) bool {
	if c, ok := n.a.setting.Book.Crop(cropID); ok {
		if u, err := c.Use(use); err == nil {
			return u.Feeds()
		}
	}
	return true
}

func (n *namer) vegetableOf(cropID, use string) string {
	if c, ok := n.a.setting.Book.Crop(cropID); ok {
		if u, err := c.Use(use); err == nil {
			return u.Vegetable
		}
	}
	return ""
}
