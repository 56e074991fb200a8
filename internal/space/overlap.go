package space

import "garner/internal/cal"

// Wrong is in which way plantings do not fit. The list is closed and documented.
type Wrong string

// The ways not to fit.
const (
	OverFull  Wrong = "over full"  // plantings hold more ground than the bed has
	TooEarly  Wrong = "too early"  // a planting goes in before the former one is cleared
	NoPartner Wrong = "no partner" // what a planting stands under or between is not there
	TooLarge  Wrong = "too large"  // one planting is larger than its bed
)

// Overlap is a time in which plantings of a bed do not fit.
type Overlap struct {
	Wrong     Wrong
	Bed       string
	From      cal.Date // first day
	Until     cal.Date // day after the last
	Over      float64  // most by which the shares pass one, as a share of the bed
	OverM2    float64  // the same [m2]
	Odds      float64  // share of futures in which it comes to that, 0-1
	Planting  string   // the one to move: the last to go in
	Plantings []string // all of them, in order of their days
	Mend      cal.Date // day from which Planting finds room in the middle year; None: not in this table
}

// Overlaps are what does not fit in the bed from its today on, in order of time.
func (b *Bed) Overlaps() []Overlap { return nil }

// Overlaps are what does not fit in any bed; see Bed.Overlaps.
func (g *Ground) Overlaps() []Overlap {
	var out []Overlap
	for i := range g.Beds {
		out = append(out, g.Beds[i].Overlaps()...)
	}
	return out
}
