package space

import "garner/internal/cal"

// Gap is free ground: a piece of a bed that nothing holds for a time. Pieces that
// lie side by side and are free at the same time are one gap; gaps of a bed never
// overlap.
type Gap struct {
	Bed    string
	From   Spread   // first day it can be sown; not before the period asked for
	Until  cal.Date // first day it is held again
	Open   bool     // nothing holds it again before the table ends, and Until is that end
	AreaM2 float64
	Share  float64  // of the bed's ground, 0-1
	At     float64  // where it begins along the bed, 0-1
	Odds   float64  // share of futures in which it is free by From.P50, 0-1
	Before []string // plantings that are cleared last before it
	Next   []string // plantings that go in on Until

	free []cal.Date // first day it can be sown, by future; None: after the table
}

// FreeBy is the share of futures, 0-1, in which the gap can be sown by a day.
func (g *Gap) FreeBy(d cal.Date) float64 {
	n := 0
	for _, f := range g.free {
		if past(f, d) {
			n++
		}
	}
	return float64(n) / float64(len(g.free))
}

// Days is how long the gap lasts in the middle year [d].
func (g *Gap) Days() int { return int(g.Until - g.From.P50) }

// Gaps are the bed's free ground that can be sown from a day on and before another,
// in order of time and then of place. Each runs until it is held again, at the
// latest to the table's end.
func (b *Bed) Gaps(from, until cal.Date) []Gap { return nil }

// Gaps are the free ground of all beds; see Bed.Gaps.
func (g *Ground) Gaps(from, until cal.Date) []Gap {
	var out []Gap
	for i := range g.Beds {
		out = append(out, g.Beds[i].Gaps(from, until)...)
	}
	return out
}

// RoomM2 is the ground of the bed that is free on every day from one day until
// another in the middle year [m2].
func (b *Bed) RoomM2(from, until cal.Date) float64 { return 0 }
