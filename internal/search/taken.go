package search

import "garner/internal/programme"

// taken lists the sowings that have units by what they share: a ground, a resource or
// a limit, so that one can be drawn.
type taken struct {
	lists    [][]int32 // by group: grounds, then resources, then limits
	of       [][]place // of each sowing
	resource int       // group of the first resource
	limit    int       // group of the first limit
}

// place is where a sowing stands in the list of a group; -1 when it has no units.
type place struct{ group, at int32 }

func newTaken(p *programme.Problem) taken {
	t := taken{of: make([][]place, len(p.Sowings)), resource: len(p.Grounds), limit: len(p.Grounds) + len(p.Resources)}
	t.lists = make([][]int32, t.limit+len(p.Limits))
	for j := range p.Sowings {
		s := &p.Sowings[j]
		t.join(int32(j), s.Ground)
		for _, u := range s.Uses {
			t.join(int32(j), t.resource+u.Resource)
		}
	}
	for l := range p.Limits {
		for _, term := range p.Limits[l].Terms {
			t.join(int32(term.Sowing), t.limit+l)
		}
	}
	return t
}

// join makes a sowing a member of a group.
func (t *taken) join(j int32, group int) {
	for _, m := range t.of[j] {
		if m.group == int32(group) {
			return
		}
	}
	t.of[j] = append(t.of[j], place{int32(group), -1})
}

// note lists a sowing when it has units, and drops it when it has none.
func (t *taken) note(j int32, units int) {
	for i := range t.of[j] {
		m := &t.of[j][i]
		list := t.lists[m.group]
		switch {
		case units > 0 && m.at < 0:
			m.at = int32(len(list))
			t.lists[m.group] = append(list, j)
		case units == 0 && m.at >= 0:
			last := list[len(list)-1]
			list[m.at] = last
			t.placeOf(last, m.group).at = m.at
			t.lists[m.group] = list[:len(list)-1]
			m.at = -1
		}
	}
}

func (t *taken) placeOf(j, group int32) *place {
	for i := range t.of[j] {
		if t.of[j][i].group == group {
			return &t.of[j][i]
		}
	}
	return nil
}

// group is the list of those that share what lacks.
func (t *taken) group(l programme.Lack) int {
	switch {
	case l.Ground >= 0:
		return l.Ground
	case l.Resource >= 0:
		return t.resource + l.Resource
	}
	return t.limit + l.Limit
}
