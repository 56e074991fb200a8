package space

import (
	"sort"

	"garner/internal/cal"
)

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
func (b *Bed) Gaps(from, until cal.Date) []Gap {
	var out []Gap
	var open []int // gaps of the strip before, which may go on beside it
	for _, p := range b.cuts() {
		var here []int
		for _, f := range b.idle(p, from, b.until) {
			if f.from >= until {
				continue
			}
			if k := touching(out, open, f, p.At); k >= 0 {
				out[k].Share += p.Share
				here = append(here, k)
				continue
			}
			out = append(out, Gap{Bed: b.ID, From: sure(f.from), Until: f.until, Open: f.until == b.until, At: p.At, Share: p.Share})
			here = append(here, len(out)-1)
		}
		open = here
	}
	for i := range out {
		b.tell(&out[i], from)
	}
	sort.SliceStable(out, func(i, k int) bool {
		if out[i].From.P50 != out[k].From.P50 {
			return out[i].From.P50 < out[k].From.P50
		}
		return out[i].At < out[k].At
	})
	return out
}

// Room is the ground of the bed that is free on every day from one day until
// another in the middle year.
func (b *Bed) Room(from, until cal.Date) []Piece {
	var out []Piece
	for _, p := range b.cuts() {
		if idle := b.idle(p, from, until); len(idle) == 1 && idle[0].from == from && idle[0].until == until {
			out = append(out, p)
		}
	}
	return joined(out)
}

// RoomM2 is the area of Room [m2].
func (b *Bed) RoomM2(from, until cal.Date) float64 { return total(b.Room(from, until)) * b.AreaM2 }

// cuts are the bed's ground cut wherever a hold begins or ends along it.
func (b *Bed) cuts() []Piece {
	at := []float64{0, 1}
	for i := range b.Holds {
		for _, p := range b.Holds[i].Pieces {
			at = append(at, p.At, p.end())
		}
	}
	sort.Float64s(at)
	var out []Piece
	last := 0.0
	for _, a := range at {
		if a-last > speck {
			out = append(out, Piece{last, a - last})
			last = a
		}
	}
	return out
}

// spell is a time from one day until another.
type spell struct{ from, until cal.Date }

// idle are the times in which nothing holds a cut of the bed and it is turned
// round, from one day until another.
func (b *Bed) idle(p Piece, from, until cal.Date) []spell {
	var out []spell
	middle := p.At + p.Share/2
	at := from
	for i := range b.Holds { // in order of their days
		h := &b.Holds[i]
		if !h.lies(middle) {
			continue
		}
		if h.From > at && at < until {
			out = append(out, spell{at, min(h.From, until)})
		}
		ready := b.ready(h.Clear.P50)
		if !ready.IsSet() {
			return out
		}
		at = max(at, ready)
	}
	if at < until {
		out = append(out, spell{at, until})
	}
	return out
}

// lies tells whether a hold lies on a place along the bed.
func (h *Hold) lies(at float64) bool {
	for _, p := range h.Pieces {
		if p.covers(at) {
			return true
		}
	}
	return false
}

// touching finds the gap of the strip before that a free time goes on with.
func touching(gaps []Gap, open []int, f spell, at float64) int {
	for _, k := range open {
		if g := &gaps[k]; g.From.P50 == f.from && g.Until == f.until && at-(g.At+g.Share) <= speck {
			return k
		}
	}
	return -1
}

// tell fills in how sure a gap is, and what is before and after it.
func (b *Bed) tell(g *Gap, from cal.Date) {
	g.AreaM2 = g.Share * b.AreaM2
	g.free = make([]cal.Date, b.futures)
	for f := range g.free {
		g.free[f] = from
	}
	piece := []Piece{{g.At, g.Share}}
	for i := range b.Holds {
		h := &b.Holds[i]
		if len(within(piece, h.Pieces)) == 0 {
			continue
		}
		switch {
		case h.From < g.From.P50:
			for f := range g.free {
				g.free[f] = later(g.free[f], b.ready(h.goneIn(f)))
			}
			if b.ready(h.Clear.P50) == g.From.P50 {
				g.Before = append(g.Before, h.Planting)
			}
		case h.From == g.Until:
			g.Next = append(g.Next, h.Planting)
		}
	}
	odds := spreadOf(g.free)
	g.From.P10, g.From.P90 = earlier(odds.P10, g.From.P50), later(odds.P90, g.From.P50)
	g.Odds = g.FreeBy(g.From.P50)
}
