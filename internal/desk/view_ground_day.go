package desk

import (
	"sort"

	"garner/internal/cal"
)

// leastPiece is the part of a bed under which ground is not told apart, 0-1.
const leastPiece = 0.01

// Part is a part of a bed on a day, along its length. Held is nil where nothing
// holds it.
type Part struct {
	BedPiece
	Held *HeldGround
}

// On divides the bed by what holds it on a day of the middle year. What stands
// under or between another is told with that other one while it is there.
func (y *BedYear) On(day cal.Date) []Part {
	var held []Part
	for i := range y.Held {
		h := &y.Held[i]
		if !h.HoldsOn(day) || y.hosted(h, day) {
			continue
		}
		for _, p := range h.Pieces {
			held = append(held, Part{p, h})
		}
	}
	sort.SliceStable(held, func(i, k int) bool { return held[i].At < held[k].At })
	var out []Part
	at := 0.0
	for _, p := range held {
		if p.At-at > leastPiece {
			out = append(out, Part{BedPiece{at, p.At - at}, nil})
		}
		out, at = append(out, p), max(at, p.At+p.Share)
	}
	if 1-at > leastPiece {
		out = append(out, Part{BedPiece{at, 1 - at}, nil})
	}
	return out
}

// hosted tells whether a planting stands on another's ground on a day.
func (y *BedYear) hosted(h *HeldGround, day cal.Date) bool {
	if !h.Leans() {
		return false
	}
	for i := range y.Held {
		if o := &y.Held[i]; o.ID == h.To && o.HoldsOn(day) {
			return true
		}
	}
	return false
}

// Guests are the plantings that stand on a planting's ground on a day.
func (y *BedYear) Guests(of *HeldGround, day cal.Date) []*HeldGround {
	var out []*HeldGround
	for i := range y.Held {
		if h := &y.Held[i]; h.Leans() && h.To == of.ID && h.HoldsOn(day) {
			out = append(out, h)
		}
	}
	return out
}

// FreeOn is how much of the bed nothing holds on a day of the middle year, as a
// share of it, and in how many places.
func (y *BedYear) FreeOn(day cal.Date) (share float64, places int) {
	for _, p := range y.On(day) {
		if p.Held == nil {
			share, places = share+p.Share, places+1
		}
	}
	return share, places
}
