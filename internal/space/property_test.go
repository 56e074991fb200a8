package space

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/plan"
	"pgregory.net/rapid"
)

// The days of the beds drawn at random.
const (
	firstDay = cal.Date(1000)
	lastDay  = cal.Date(1300)
	futures  = 5
)

// areas are shares of a bed as growers tell them.
var areas = []float64{0.1, 0.15, 0.25, 1.0 / 3, 0.4, 0.5, 0.6, 0.75, 1}

func drawHold(t *rapid.T, name string, related bool) Hold {
	from := cal.Date(rapid.IntRange(int(firstDay)-100, int(lastDay)).Draw(t, "from"))
	h := Hold{Planting: name, Bed: "b", From: from, Share: rapid.SampledFrom(areas).Draw(t, "share")}
	h.AreaM2 = h.Share * 10
	stays := rapid.IntRange(1, 150).Draw(t, "days")
	for range futures {
		h.gone = append(h.gone, from+cal.Date(stays+rapid.IntRange(0, 20).Draw(t, "late")))
	}
	if rapid.IntRange(0, 15).Draw(t, "for good") == 0 {
		for f := range h.gone {
			h.gone[f] = cal.None
		}
	}
	h.Clear = spreadOf(h.gone)
	if related {
		h.Relation = rapid.SampledFrom([]plan.Relation{plan.Alone, plan.Alone, plan.After, plan.Under, plan.Between}).Draw(t, "relation")
		if h.Relation != plan.Alone {
			h.To = rapid.SampledFrom([]string{"a", "b", "c", "d"}).Draw(t, "to")
		}
	}
	return h
}

func drawHolds(t *rapid.T, related bool) []Hold {
	var out []Hold
	for i := range rapid.IntRange(0, 9).Draw(t, "plantings") {
		out = append(out, drawHold(t, string(rune('a'+i)), related))
	}
	return out
}

func laid(holds []Hold) *Bed {
	b := &Bed{ID: "b", AreaM2: 10, TurnRoundD: 5, until: lastDay, futures: futures, today: firstDay}
	b.Holds = append([]Hold(nil), holds...)
	b.lay()
	return b
}

// On every day every place of a bed is held, being turned round, or free, and
// free ground is in one gap only.
func TestHoldsTurnRoundAndGapsFillTheBed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := laid(drawHolds(t, true))
		gaps := b.Gaps(firstDay, lastDay)
		for d := firstDay; d < lastDay; d += 3 {
			for _, at := range []float64{0.0213, 0.1719, 0.3041, 0.4507, 0.5513, 0.7039, 0.8707, 0.9811} {
				busy, free := false, 0
				for i := range b.Holds {
					h := &b.Holds[i]
					busy = busy || (h.lies(at) && h.From <= d && !past(b.ready(h.Clear.P50), d))
				}
				for _, g := range gaps {
					if (Piece{g.At, g.Share}).covers(at) && g.From.P50 <= d && d < g.Until {
						free++
					}
				}
				if want := map[bool]int{true: 0, false: 1}[busy]; free != want {
					t.Fatalf("day %d at %v: held or turned round %v, in %d gaps", d, at, busy, free)
				}
			}
		}
	})
}

// A planting has its whole share of the bed in pieces that do not overlap.
func TestPiecesComeToTheShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := laid(drawHolds(t, true))
		for i := range b.Holds {
			h := &b.Holds[i]
			if got := total(joined(h.Pieces)); math.Abs(got-h.Share) > 1e-5 || math.Abs(total(h.Pieces)-got) > 1e-5 {
				t.Fatalf("%s has %v in %v, want %v", h.Planting, got, h.Pieces, h.Share)
			}
			for _, p := range h.Pieces {
				if p.At < -speck || p.end() > 1+speck {
					t.Fatalf("%s lies at %v, outside the bed", h.Planting, p)
				}
			}
		}
	})
}

// reported tells whether a day lies in an overlap that is told.
func reported(overlaps []Overlap, d cal.Date) bool {
	for _, o := range overlaps {
		if (o.Wrong == OverFull || o.Wrong == TooEarly || o.Wrong == TooLarge) && o.From <= d && d < o.Until {
			return true
		}
	}
	return false
}

// Shares of a bed never exceed one, and plantings that have nothing to do with
// each other never lie on the same ground, unless it is told.
func TestSharesNeverExceedOneUnlessTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := laid(drawHolds(t, false))
		overlaps := b.Overlaps()
		for d := firstDay + 1; d < lastDay; d++ {
			if reported(overlaps, d) {
				continue
			}
			sum := 0.0
			var on []Piece
			for i := range b.Holds {
				if h := &b.Holds[i]; h.holdsOn(d) {
					sum += h.Share
					on = append(on, h.Pieces...)
				}
			}
			if sum > 1+full {
				t.Fatalf("day %d: shares come to %v and nothing is told", d, sum)
			}
			if got := total(joined(on)); math.Abs(got-sum) > 1e-5 {
				t.Fatalf("day %d: shares come to %v and lie on %v of the bed", d, sum, got)
			}
		}
	})
}

func freeOn(gaps []Gap, d cal.Date) float64 {
	sum := 0.0
	for _, g := range gaps {
		if g.From.P50 <= d && d < g.Until {
			sum += g.AreaM2
		}
	}
	return sum
}

// One more planting never leaves more free ground on any day.
func TestFreeGroundNeverGrowsWithAPlanting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holds := drawHolds(t, false)
		more := append(append([]Hold(nil), holds...), drawHold(t, "z", false))
		before, after := laid(holds).Gaps(firstDay, lastDay), laid(more).Gaps(firstDay, lastDay)
		for d := firstDay; d < lastDay; d++ {
			if a, b := freeOn(after, d), freeOn(before, d); a > b+1e-5 {
				t.Fatalf("day %d: %v m2 free with one planting more, %v before", d, a, b)
			}
		}
	})
}

// The layout does not depend on the order in which plantings are listed.
func TestTheOrderOfTheListDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holds := drawHolds(t, true)
		b, other := laid(holds), laid(rapid.Permutation(holds).Draw(t, "order"))
		for i := range b.Holds {
			h, o := &b.Holds[i], &other.Holds[i]
			if h.Planting != o.Planting || h.At != o.At || len(h.Pieces) != len(o.Pieces) {
				t.Fatalf("%s lies at %v, or %s at %v", h.Planting, h.Pieces, o.Planting, o.Pieces)
			}
		}
	})
}

// Odds and spreads of a gap agree: it is free by its middle day in at least five
// years of ten where nothing else is known, and in all by its late day and more.
func TestOddsOfGaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := laid(drawHolds(t, true))
		for _, g := range b.Gaps(firstDay, lastDay) {
			if g.From.P10 > g.From.P50 || sooner(g.From.P90, g.From.P50) {
				t.Fatalf("early, middle and late are %v", g.From)
			}
			if g.Odds != g.FreeBy(g.From.P50) || g.Odds < 0 || g.Odds > 1 {
				t.Fatalf("odds %v", g.Odds)
			}
			if g.From.P90.IsSet() && g.FreeBy(g.From.P90) < 0.8 {
				t.Fatalf("free by the late day in %v of the futures", g.FreeBy(g.From.P90))
			}
		}
	})
}
