package carry

import (
	"math"

	"garner/internal/place"
	"garner/internal/rotation"
)

// What it costs to give a bed's sowings to a bed, so that room comes before
// rotation and rotation before staying where they were.
const (
	costOfRoom          = 1e6   // for each sowing that finds no room in its own bed
	costOfRoomElsewhere = 1.5e6 // for each that finds none in another: with no room anywhere it stays
	costOfClash         = 1e3   // for each sowing that comes back too soon, and up to a hundred more by how much
	costOfMoving        = 1
	never               = 1e12 // the beds are not alike
)

// give gives the sowings of each bed a bed for the next year.
func (c *carrier) give() {
	blocks := map[string][]*Carried{}
	for i := range c.out.Sowings {
		s := &c.out.Sowings[i]
		blocks[s.FromBed] = append(blocks[s.FromBed], s)
	}
	costs := make([][]float64, len(c.Beds))
	for i := range c.Beds {
		costs[i] = make([]float64, len(c.Beds))
		for k := range c.Beds {
			costs[i][k] = c.cost(blocks[c.Beds[i].ID], &c.Beds[i], &c.Beds[k])
		}
	}
	for i, k := range cheapest(costs) {
		from, to := c.Beds[i].ID, c.Beds[k].ID
		c.went[from] = to
		for _, s := range blocks[from] {
			s.Bed = c.told(s, to)
		}
	}
	c.part()
}

// told is the bed a sowing goes to: as told, with a perennial it stands by, or as
// given.
func (c *carrier) told(s *Carried, given string) string {
	if bed, ok := c.Into[s.From]; ok {
		if _, known := c.beds[bed]; known {
			return bed
		}
	}
	if bed, ok := c.host[s.ID]; ok {
		return bed
	}
	return given
}

// cost is what it costs to move a bed's sowings to another; nothing where there are
// none.
func (c *carrier) cost(block []*Carried, from, to *place.Bed) float64 {
	if len(block) == 0 {
		return 0
	}
	if !c.alike(from, to) {
		return never
	}
	cost, room := 0.0, costOfRoom
	if from.ID != to.ID {
		cost, room = costOfMoving, costOfRoomElsewhere
	}
	others := c.stood[to.ID]
	others = others[:len(others):len(others)]
	for _, s := range block {
		stay := c.stayOf(s)
		if !c.fits(to.ID, stay, others) {
			cost += room
		}
		others = append(others, stay)
		if clash := c.clash(s, to.ID); clash != nil {
			cost += costOfClash + math.Min(clash.Early, 100)
		}
	}
	return cost
}

// lightWithin is by how much beds alike may differ in the share of light they get.
const lightWithin = 0.15

// alike tells whether sowings of one bed may go to another. A bed that keeps its
// crops gives none away and takes none.
func (c *carrier) alike(a, b *place.Bed) bool {
	if a.ID == b.ID {
		return true
	}
	return a.Rotation != rotation.Silent && b.Rotation != rotation.Silent && a.Site == b.Site && a.Kind == b.Kind &&
		math.Abs(a.Light-b.Light) <= lightWithin && c.standing(a.ID) == c.standing(b.ID)
}

// standing is the cover that stays over a bed, empty when there is none.
func (c *carrier) standing(bed string) string {
	for _, spell := range place.CoversOf(c.Covers, bed) {
		if !spell.Off.IsSet() {
			return string(spell.Kind)
		}
	}
	return ""
}

// clash tells whether a sowing would come back too soon to a bed, nil when not. What
// is told gently is no clash.
func (c *carrier) clash(s *Carried, bed string) *rotation.Clash {
	found := c.history.Check(bed, rotation.Candidate{Crop: s.Crop, Use: s.Use, Date: s.Date, Planting: s.ID})
	if found == nil || found.Gentle {
		return nil
	}
	return found
}
