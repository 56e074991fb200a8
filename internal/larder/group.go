package larder

import (
	"cmp"
	"slices"

	"garner/internal/fault"
	"garner/internal/words"
)

// Group is vegetables that stand in for each other. What is wanted of it is eaten
// from its members once their own wants are met.
type Group struct {
	ID, Name string
	Members  []Member
}

// Member is a vegetable of a group. The lower its preference the better it is
// liked; members of one preference are eaten as they are listed.
type Member struct {
	Vegetable  string
	Preference int
}

// Membership tells that a vegetable belongs to a group.
type Membership struct {
	ID, Group string
	Member
}

// Gather puts memberships into their groups, in their order.
func Gather(groups []Group, memberships []Membership) []Group {
	out := slices.Clone(groups)
	for i := range out {
		out[i].Members = nil
		for _, m := range memberships {
			if m.Group == out[i].ID {
				out[i].Members = append(out[i].Members, m.Member)
			}
		}
	}
	return out
}

// soonOver is how many days ahead a group's eater looks for what is going over
// before going by what is liked best [d].
const soonOver = 7

// ownWant marks that a vegetable's own want is eaten, and no group's.
const ownWant = -1

// nameGroups finds the places of the groups' members, the best liked first.
func (p *Pantry) nameGroups(faults fault.List) fault.List {
	for i := range p.in.Groups {
		g := &p.in.Groups[i]
		if _, twice := p.byGroup[g.ID]; twice {
			faults = append(faults, fault.New(fault.Conflict, "larder.group_twice", words.Args{"group": g.Name}))
		}
		p.byGroup[g.ID] = int32(len(p.in.Vegetables) + i)
		liked := slices.Clone(g.Members)
		slices.SortStableFunc(liked, func(a, b Member) int { return cmp.Compare(a.Preference, b.Preference) })
		var at []int32
		for _, m := range liked {
			v, known := p.byName[m.Vegetable]
			switch {
			case !known:
				faults = append(faults, fault.New(fault.NotFound, "larder.member_vegetable", words.Args{"group": g.Name, "vegetable": m.Vegetable}))
				continue
			case slices.Contains(at, v):
				faults = append(faults, fault.New(fault.Conflict, "larder.member_twice", words.Args{"group": g.Name, "vegetable": m.Vegetable}))
			}
			at = append(at, v)
		}
		if len(g.Members) == 0 {
			faults = append(faults, fault.New(fault.Invalid, "larder.group_empty", words.Args{"group": g.Name}))
		}
		p.members = append(p.members, at)
	}
	return faults
}

// rowOf is the row of the table that a want, or a gap that is left, is about.
func (p *Pantry) rowOf(vegetable, group string) (int32, bool) {
	if group != "" {
		row, known := p.byGroup[group]
		return row, known
	}
	row, known := p.byName[vegetable]
	return row, known
}

// eatGroup meets the day's want of a group from what its members have left: first
// what goes over within a week, the soonest first, then what is liked best.
func (s *Scratch) eatGroup(g, day int, out *Year) {
	row := len(s.queues) + g
	need := s.pantry.wants[row][day]
	if need == 0 {
		return
	}
	s.row = g
	eaten := meal{}
	for until := day; until < day+soonOver && need > 0; until++ {
		for _, v := range s.pantry.members[g] {
			need = s.take(int(v), day, until, need, &eaten, out)
		}
	}
	for _, v := range s.pantry.members[g] {
		need = s.take(int(v), day, latestDay, need, &eaten, out)
	}
	s.row = ownWant
	s.note(row, day, need, &eaten, out)
}
