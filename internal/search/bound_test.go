package search

import (
	"testing"

	"garner/internal/programme"
)

// The bound never falls and comes near the best of a problem whose relaxation is
// easy: one unit of ground, and food for a week that two sowings could give. By
// hand: the better one leaves 1 kg short at 2, and costs 0.5.
func TestBoundByHand(t *testing.T) {
	lot := func(kg float64) [][]programme.Lot { return [][]programme.Lot{{{First: 1, Last: 1, Kg: kg}}} }
	p := &programme.Problem{Weeks: 2, Futures: []int{0},
		Grounds: []programme.Ground{{ID: "bed", UnitM2: 1, Units: 1, Last: 1}},
		Demands: []programme.Demand{{ID: "kale", Levels: []programme.Level{{PerWeek: []float64{0, 4}, Cost: 2}}}},
		Sowings: []programme.Sowing{{ID: "a", Lots: lot(3), Cost: 0.5, Most: 1, Last: 1}, {ID: "b", Lots: lot(1), Cost: 0.5, Most: 1, Last: 1}}}
	b := NewBound(p)
	last := b.Step(1)
	for range 40 {
		now := b.Step(50)
		if now < last {
			t.Fatalf("the bound fell from %v to %v", last, now)
		}
		last = now
	}
	if last > 2.5+1e-9 || last < 2.49 {
		t.Errorf("the bound is %v, by hand 2.5", last)
	}
}
