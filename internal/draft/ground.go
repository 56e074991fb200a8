package draft

import (
	"fmt"
	"math"
	"strings"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/programme"
	"garner/internal/space"
)

// Sizes between which a unit of ground lies [m2]. judgement: less than half a square
// metre is a row or two, which no plan names; more than two is more of most crops
// than a week eats.
const (
	leastUnitM2 = 0.5
	mostUnitM2  = 2.0
)

// unitsOf divides free ground into units: a twelfth of the bed, within the sizes
// above, and all of equal size.
func unitsOf(freeM2, bedM2 float64) int {
	unit := num.Clamp(bedM2/12, leastUnitM2, mostUnitM2)
	return max(1, int(math.Round(freeM2/unit)))
}

// grounds parts the free ground of all beds into classes of like units.
func (b *builder) grounds(g *space.Ground) error {
	index, kinds := map[string]int{}, map[num.Digest]int{}
	for i := range g.Beds {
		bed := &g.Beds[i]
		alike, err := b.scales.Alike(bed.ID)
		if err != nil {
			return err
		}
		if _, known := kinds[alike]; !known {
			kinds[alike] = len(b.kinds)
			b.kinds = append(b.kinds, kind{bed: bed.ID, first: b.Weeks})
		}
		barred := b.barred(bed.ID)
		for _, gap := range bed.Gaps(b.Today, g.Until) {
			first, last := b.weeksOf(&gap, bed.TurnRoundD)
			if last < first || gap.AreaM2 < leastUnitM2/2 && gap.AreaM2 < bed.AreaM2/2 {
				continue // no time, or a strip too narrow to be named
			}
			units := unitsOf(gap.AreaM2, bed.AreaM2)
			m2 := gap.AreaM2 / float64(units)
			k := &b.kinds[kinds[alike]]
			k.first, k.last = min(k.first, first), max(k.last, last)
			key := fmt.Sprintf("%d/%.6f/%d/%d/%d/%s", kinds[alike], m2, first, last, bed.TurnRoundD, barred.name) + b.sheets[bed.ID].name()
			at, known := index[key]
			if !known {
				at = len(b.draft.Classes)
				index[key] = at
				b.draft.Classes = append(b.draft.Classes, Class{UnitM2: m2, kind: kinds[alike], turn: bed.TurnRoundD, bars: barred, sheet: b.sheets[bed.ID]})
				b.problem.Grounds = append(b.problem.Grounds, programme.Ground{ID: fmt.Sprintf("ground-%d", at+1), UnitM2: m2, First: first, Last: last})
			}
			b.piece(at, bed.ID, units)
		}
	}
	return nil
}

// piece adds units of a bed to a class.
func (b *builder) piece(at int, bed string, units int) {
	c, g := &b.draft.Classes[at], &b.problem.Grounds[at]
	c.Pieces = append(c.Pieces, Piece{bed, units})
	g.Units += units
	if len(g.Beds) == 0 || g.Beds[len(g.Beds)-1] != bed {
		g.Beds = append(g.Beds, bed)
	}
}

// weeksOf are the first and the last week in which a gap can be used: from the first
// Monday on which it is free in clearShare of the futures, to the last week that ends
// before what comes next, with time to turn it round.
func (b *builder) weeksOf(gap *space.Gap, turn int) (first, last int) {
	first = b.Weeks
	for week := range b.Weeks {
		if day := b.draft.monday(week); day >= b.Today && gap.FreeBy(day) >= clearShare {
			first = week
			break
		}
	}
	last = b.Weeks - 1
	if !gap.Open {
		last = int(gap.Until-cal.Date(turn)-b.From)/7 - 1
	}
	return first, last
}

// kind is ground on which everything grows alike.
type kind struct {
	bed         string // one of its beds
	first, last int    // weeks in which any of it is free
}

// name joins what may not be sown into one text, so that beds can be compared.
func name(lines []string) string { return strings.Join(lines, ";") }
