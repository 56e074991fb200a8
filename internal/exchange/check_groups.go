package exchange

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// checkGroups finds groups that are wanted and have no vegetables, vegetables that
// are in a group twice, and groups of one name.
func (c *checker) checkGroups() {
	members := c.checkMembers()
	for i, w := range c.h.Wants {
		if w.Group != "" && c.has("groups", w.Group) && !c.unread["members"] && members[w.Group] == 0 {
			c.wrong("wants", i, "group", fault.New(fault.Invalid, "exchange.group_empty", words.Args{"group": w.Group}))
		}
	}
	named := map[string]int{}
	for i, g := range c.h.Groups {
		if first, twice := named[g.Name]; twice {
			c.wrong("groups", i, "name", fault.New(fault.Conflict, "exchange.group_name_twice", words.Args{"given": g.Name, "other": c.h.Groups[first].ID}))
			continue
		}
		named[g.Name] = i
	}
}

// checkMembers counts the vegetables of each group.
func (c *checker) checkMembers() map[string]int {
	type pair struct{ group, vegetable string }
	count, seen := map[string]int{}, map[pair]bool{}
	for i, m := range c.h.Members {
		p := pair{m.Group, m.Vegetable}
		if seen[p] {
			c.wrong("members", i, "vegetable", fault.New(fault.Conflict, "exchange.member_twice", words.Args{"vegetable": m.Vegetable, "group": m.Group}))
		}
		seen[p] = true
		count[m.Group]++
	}
	return count
}
