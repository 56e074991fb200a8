package draft

import (
	"fmt"

	"garner/internal/crop"
	"garner/internal/rotation"
)

// bars say in which weeks which crops may not be started on a bed: its rotation
// forbids them, or the grower does.
type bars struct {
	name string // beds with the same bars have the same name
	of   map[*crop.Use][]bool
}

// barred works out a bed's bars.
func (b *builder) barred(bed string) *bars {
	out := &bars{of: map[*crop.Use][]bool{}}
	var lines []string
	for _, c := range b.Book.Crops() {
		never := b.setting.forbidden(c.ID, bed)
		for _, u := range c.Uses {
			if _, wanted := b.draft.demands[u.Vegetable]; !wanted {
				continue
			}
			weeks, any := make([]bool, b.Weeks), false
			for week := range weeks {
				weeks[week] = never || b.clashes(bed, u, week)
				any = any || weeks[week]
			}
			if any {
				out.of[u] = weeks
				lines = append(lines, fmt.Sprint(c.ID, "/", u.Name, weeks))
			}
		}
	}
	out.name = name(lines)
	return out
}

func (b *builder) clashes(bed string, u *crop.Use, week int) bool {
	c := b.history.Check(bed, rotation.Candidate{Crop: u.Crop, Use: u.Name, Date: b.draft.monday(week)})
	return c != nil && !c.Gentle
}

// at tells whether a use is barred in a week.
func (b *bars) at(u *crop.Use, week int) bool {
	weeks := b.of[u]
	return weeks != nil && weeks[week]
}
