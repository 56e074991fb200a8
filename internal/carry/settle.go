package carry

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/plan"
	"garner/internal/rotation"
)

// settle moves single sowings that clash or find no room to beds alike where they
// do neither, then tells what is left.
func (c *carrier) settle() {
	for range c.out.Sowings {
		moved := false
		for i := range c.out.Sowings {
			moved = c.rescue(&c.out.Sowings[i]) || moved
		}
		if !moved {
			break
		}
	}
	for i := range c.out.Sowings {
		c.tell(&c.out.Sowings[i])
	}
}

// rescue moves a sowing in trouble, with what stands under or between it, to the
// first bed alike that suits them all.
func (c *carrier) rescue(s *Carried) bool {
	if leans(&s.Planting) || c.fixed(s) || c.suits(s, s.Bed) {
		return false
	}
	from := c.beds[s.FromBed]
	unit := c.unit(s)
	for _, id := range c.byLikeness(s) {
		to := c.beds[id]
		if id == s.Bed || !c.alike(&from, &to) || c.lifted(s, id) || slices.ContainsFunc(unit, func(u *Carried) bool { return c.fixed(u) || !c.suits(u, id) }) {
			continue
		}
		for _, u := range unit {
			u.Bed = id
		}
		c.part()
		return true
	}
	return false
}

// lifted tells whether a sowing is lifted into or out of a bed, where it cannot
// stand as well.
func (c *carrier) lifted(s *Carried, bed string) bool {
	return slices.ContainsFunc(c.out.Sowings, func(o Carried) bool {
		return o.Bed == bed && (o.Relation == plan.Moved && o.To == s.ID || s.Relation == plan.Moved && s.To == o.ID)
	})
}

// fixed tells whether a sowing's bed is told, or its neighbour's.
func (c *carrier) fixed(s *Carried) bool {
	_, told := c.Into[s.From]
	_, hosted := c.host[s.ID]
	return told || hosted
}

// unit is a sowing with what stands under or between it.
func (c *carrier) unit(s *Carried) []*Carried {
	out := []*Carried{s}
	for i := range c.out.Sowings {
		if o := &c.out.Sowings[i]; o.To == s.ID && leans(&o.Planting) {
			out = append(out, o)
		}
	}
	return out
}

// suits tells whether a sowing has room on a bed and does not come back too soon.
func (c *carrier) suits(s *Carried, bed string) bool {
	return c.hasRoom(s, bed) && c.clash(s, bed) == nil
}

func (c *carrier) hasRoom(s *Carried, bed string) bool {
	others := c.stood[bed]
	others = others[:len(others):len(others)]
	for i := range c.out.Sowings {
		if o := &c.out.Sowings[i]; o.Bed == bed && o.ID != s.ID {
			others = append(others, c.stayOf(o))
		}
	}
	return c.fits(bed, c.stayOf(s), others)
}

// byLikeness are all beds, the nearest in size to the sowing's own first.
func (c *carrier) byLikeness(s *Carried) []string {
	own := c.beds[s.FromBed]
	ids := make([]string, 0, len(c.Beds))
	for _, b := range c.Beds {
		ids = append(ids, b.ID)
	}
	slices.SortStableFunc(ids, func(a, b string) int {
		return cmp.Compare(math.Abs(c.beds[a].AreaM2()-own.AreaM2()), math.Abs(c.beds[b].AreaM2()-own.AreaM2()))
	})
	return ids
}

// part lets sowings stand alone whose neighbour went to another bed; one that is
// lifted from where it was raised stands alone when it is not in another.
func (c *carrier) part() {
	bed := map[string]string{}
	for i := range c.out.Sowings {
		bed[c.out.Sowings[i].ID] = c.out.Sowings[i].Bed
	}
	for i := range c.out.Sowings {
		s := &c.out.Sowings[i]
		if at, carried := bed[s.To]; carried && (at != s.Bed) != (s.Relation == plan.Moved) {
			s.Relation, s.To = plan.Alone, ""
		}
	}
}

// mostOthers is how many other beds are named.
const mostOthers = 3

// tell names what is the matter with a sowing where it stands.
func (c *carrier) tell(s *Carried) {
	t := Trouble{Planting: s.From, Carried: s.ID, Bed: s.Bed}
	switch clash := c.clash(s, s.Bed); {
	case !c.hasRoom(s, s.Bed):
		t.Kind = NoRoom
	case clash != nil && c.beds[s.Bed].Rotation != rotation.Silent:
		t.Kind, t.Clash = TooSoon, clash
	default:
		return
	}
	own := c.beds[s.FromBed]
	for _, id := range c.byLikeness(s) {
		other := c.beds[id]
		if id != s.Bed && other.Site == own.Site && other.Rotation != rotation.Silent && len(t.Others) < mostOthers &&
			!leans(&s.Planting) && c.suits(s, id) {
			t.Others = append(t.Others, id)
		}
	}
	c.out.Troubles = append(c.out.Troubles, t)
}
