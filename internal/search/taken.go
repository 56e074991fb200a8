package search

import "garner/internal/programme"

// taken lists the sowings that have units by ground, so that one can be drawn.
type taken struct {
	lists [][]int32
	at    []int32 // place of each sowing in its list; none: -1
}

func newTaken(p *programme.Problem) taken {
	t := taken{lists: make([][]int32, len(p.Grounds)), at: make([]int32, len(p.Sowings))}
	for j := range t.at {
		t.at[j] = -1
	}
	return t
}

// note lists a sowing of a ground when it has units, and drops it when it has none.
func (t *taken) note(j int32, ground, units int) {
	list := t.lists[ground]
	switch at := t.at[j]; {
	case units > 0 && at < 0:
		t.at[j] = int32(len(list))
		t.lists[ground] = append(list, j)
	case units == 0 && at >= 0:
		last := list[len(list)-1]
		list[at], t.at[last] = last, at
		t.lists[ground], t.at[j] = list[:len(list)-1], -1
	}
}
