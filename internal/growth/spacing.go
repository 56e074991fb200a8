package growth

import (
	"math"

	"garner/internal/crop"
)

// roomPower says how far a piece of full size grows with the room it is given
// beyond the book's: with this power of the room.
//
// judgement: between 0 (one size, whatever the room) and 1 (all room is filled,
// and yield by area does not fall). Onions at 20 to 60 plants a m2 (Ratkowsky
// 1983) have about 0.6, and maize gave 1.5 times the grain at 4.8 plants a m2 of
// that at 2.3 (Annals of Applied Biology, "Effect of plant population on the
// production and distribution of dry matter in maize", abstract), which is 0.45.
const roomPower = 0.5

// Spaced returns the use with plants set at other distances [m] than the book's;
// 0 keeps the book's distance. Closer plants are more to the m2 and share its
// light, so each stays smaller (the law of constant final yield; Shinozaki &
// Kira 1956); plants with more room grow larger, but not by as much, so that
// yield by area falls.
//
// judgement: the full leaf of a plant grows with its room as its piece does,
// since plants of one shape keep their parts in proportion. A sparse stand
// therefore never comes to the leaf area of a full one.
func Spaced(u *crop.Use, inRowM, betweenRowM float64) *crop.Use {
	if inRowM <= 0 && betweenRowM <= 0 {
		return u
	}
	own := *u
	if inRowM > 0 {
		own.InRowM = inRowM
	}
	if betweenRowM > 0 {
		own.BetweenRowM = betweenRowM
	}
	if room := u.PlantsPerM2() / own.PlantsPerM2(); room > 1 {
		own.PieceG *= math.Pow(room, roomPower)
		own.LeafMax *= math.Pow(room, roomPower-1)
	}
	own.Sparse = max(0, 1-(1-u.Sparse)*own.PlantsPerM2()/u.PlantsPerM2())
	return &own
}

// Fullness is how far the planting's leaf fills its ground, as a share of the
// leaf of a full stand of its kind, 0-1.
func (s *Plants) Fullness(p *Parameters) float64 { return min(1, s.Leaf/p.fullLeaf) }

// Crowd tells a planting how far the leaves of others fill its ground, in full
// stands of their own kind (0: not at all). A sparse stand's plants have the room
// that all plants leave them, not the room between their own: all share the ground
// by how far their leaves fill it. Beside plants as good as itself each grows to
// the size it has in a full stand; where others stay behind, it takes their room.
// What has grown stays. A stand that is full by itself is crowded by its own
// plants alone, and by the light; and beside a better one a plant keeps the room
// for the size it has in a full stand, and lacks light for it.
//
// Source: de Wit 1960, On competition (plants of two kinds in a replacement series
// share the room of one full stand); Kropff & Spitters 1991, A simple model of crop
// loss by weed competition from early observations on relative leaf area of the
// weeds, Weed Research 31:97-105 (each kind takes it by its leaf). Both from
// memory. judgement: leaf of all kinds takes room alike.
func (s *Plants) Crowd(p *Parameters, others float64) {
	s.room = 1
	if p.Use.Sparse > 0 && others > 0 {
		own := s.Fullness(p)
		s.room = math.Pow(max(1-p.Use.Sparse, own/(own+others)), roomPower)
	}
}
