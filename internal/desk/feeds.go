package desk

import (
	"garner/internal/holding"
	"garner/internal/larder"
)

// feeds are the vegetables that fill a row of the table: a group's members, or the
// vegetable itself.
func feeds(h *holding.Holding, name string) []string {
	g := groupNamed(h, name)
	if g == nil {
		return []string{name}
	}
	var out []string
	for _, m := range g.Members {
		out = append(out, m.Vegetable)
	}
	return out
}

// groupNamed is the group of a name, with its members; nil when there is none.
func groupNamed(h *holding.Holding, name string) *larder.Group {
	for _, g := range larder.Gather(h.Groups, h.Members) {
		if g.Name == name {
			return &g
		}
	}
	return nil
}
