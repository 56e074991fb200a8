package space

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/plan"
)

// Spread is a date in the early, middle and late year of ten over the futures.
// None stands for a day after the table's end.
type Spread struct{ P10, P50, P90 cal.Date }

// sure is a date known for certain.
func sure(d cal.Date) Spread { return Spread{d, d, d} }

// Sure tells whether the spread is one day.
func (s Spread) Sure() bool { return s.P10 == s.P90 }

// Hold is one planting, or the part of it that was lost on one day, holding its
// share of a bed from the day it goes in to the day it is gone.
type Hold struct {
	Planting string
	Bed      string
	Crop     string
	Use      string

	From  cal.Date // first day it holds the ground
	Clear Spread   // first day it holds it no more

	AreaM2 float64
	Share  float64 // of the bed's ground that its area comes to; may be over 1
	At     float64 // where its first piece begins along the bed, 0-1
	Pieces []Piece // where it lies; their shares add up to Share, at most the bed

	Relation  plan.Relation
	To        string // planting it stands under, between or after
	Guest     bool   // it stands under or between another that is there: the ground counts as the other's
	Perennial bool
	Fixed     bool // it is in the ground already, or has been: it cannot be moved
	Lost      bool // the part of a planting that was recorded as lost
	Over      bool // some of it lies on ground that another still holds

	gone []cal.Date // its clearing day by future; one day for all where they agree; None: after the table
}

// GoneBy is the share of futures, 0-1, in which the planting is gone by a day:
// that day's ground is not its own any more.
func (h *Hold) GoneBy(d cal.Date) float64 {
	n := 0
	for _, g := range h.gone {
		if g.IsSet() && g <= d {
			n++
		}
	}
	return float64(n) / float64(len(h.gone))
}

// holdsOn tells whether it holds its ground on a day, in the middle year.
func (h *Hold) holdsOn(d cal.Date) bool { return h.From <= d && !past(h.Clear.P50, d) }

// holdsIn tells whether it holds its ground on a day under one future.
func (h *Hold) holdsIn(future int, d cal.Date) bool {
	return h.From <= d && !past(h.goneIn(future), d)
}

// goneIn is its clearing day under one future.
func (h *Hold) goneIn(future int) cal.Date {
	if len(h.gone) == 1 {
		return h.gone[0]
	}
	return h.gone[future]
}

// past tells whether a clearing day, None for never, has come by a day.
func past(gone, d cal.Date) bool { return gone.IsSet() && gone <= d }

// spreadOf gives the early, middle and late of days over the futures; None counts
// as later than all. Ranks are rounded, so that each is a day that occurs.
func spreadOf(days []cal.Date) Spread {
	sorted := slices.Clone(days)
	slices.Sort(sorted)
	never := 0 // None sorts first and counts as last
	for never < len(sorted) && !sorted[never].IsSet() {
		never++
	}
	at := func(tenths int) cal.Date {
		if i := never + (tenths*(len(sorted)-1)+5)/10; i < len(sorted) {
			return sorted[i]
		}
		return cal.None
	}
	return Spread{at(1), at(5), at(9)}
}

// sooner compares days of which None is later than all.
func sooner(a, b cal.Date) bool { return a.IsSet() && (!b.IsSet() || a < b) }

// earlier is the sooner of two days.
func earlier(a, b cal.Date) cal.Date {
	if sooner(b, a) {
		return b
	}
	return a
}

// later is the later of two days.
func later(a, b cal.Date) cal.Date {
	if sooner(a, b) {
		return b
	}
	return a
}
