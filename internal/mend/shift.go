package mend

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/space"
)

// weeksMoved are the weeks by which a sowing is moved.
var weeksMoved = []int{-4, -2, -1, 1, 2, 4}

// shifts are sowings to come that feed the row, moved in time where the ground is
// free for it.
func (w *weighing) shifts() []Proposal {
	var out []Proposal
	plantings, uses := w.feeding()
	for i, p := range plantings {
		bed, h := w.toCome(&p)
		if h == nil {
			continue
		}
		for _, weeks := range weeksMoved {
			moved := p
			moved.Date += cal.Date(7 * weeks)
			if w.fits(bed, h, &moved, uses[i], cal.Date(7*weeks)) {
				out = append(out, Proposal{Kind: Shift, Edit: outlook.Edit{Set: []plan.Planting{moved}}, Planting: moved, Was: p})
			}
		}
	}
	return out
}

// fits tells whether a sowing can go in on its new day: it lies ahead, it is the
// time of year for it, what is raised still can be, and the rest of the plan leaves
// it its ground.
func (w *weighing) fits(bed *space.Bed, h *space.Hold, p *plan.Planting, u *crop.Use, by cal.Date) bool {
	method := p.Method
	if method == "" && len(u.Methods) > 0 {
		method = plan.Method(u.Methods[0])
	}
	raised := p.Date
	if method == plan.Plant {
		raised -= cal.Date(u.RaiseDays)
	}
	switch {
	case raised < w.today || p.Date >= w.adviser.Table.End()-leastDays:
		return false
	case p.ClearBy.IsSet() && p.ClearBy-p.Date < leastDays:
		return false
	case season.TooEarly(u, growth.StartOf(string(method)), p.Date, !w.southern()):
		return false
	}
	without := *bed
	without.Holds = slices.DeleteFunc(slices.Clone(bed.Holds), func(o space.Hold) bool { return o.Planting == p.ID })
	until := w.goneBy(bed, h)
	if !p.ClearBy.IsSet() {
		until = min(w.adviser.Table.End(), until+max(0, by))
	}
	return without.RoomM2(p.Date, until) >= min(p.AreaM2, bed.AreaM2)-nearlyM2
}

// nearlyM2 is what an area may lack for rounding [m2].
const nearlyM2 = 0.01
