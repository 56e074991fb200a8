package search

import (
	"testing"

	"garner/internal/num"
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

// With any prices, however they are drawn, the bound stays below every plan;
// after some steps it is near, and no sowing makes its ground cheaper than the cheapest.
func TestAnyPricesBound(t *testing.T) {
	p := invented(5, size{2, 6, 4, 40, 3})
	found := Run(p.NewStanding(), Asked{Seed: 1, Steps: 20_000})
	b := NewBound(p)
	r := num.NewStream(num.Key("prices"), 1)
	for range 200 {
		for i := range b.now {
			b.now[i] = 3 * r.Float64()
		}
		b.fit(b.now)
		if v := b.value(b.now); v > found.Objective+1e-9 {
			t.Fatalf("prices bound by %v a plan that costs %v", v, found.Objective)
		}
	}
	b.Aim(found.Objective)
	if b.Step(4000); b.Value < 0.9*found.Objective {
		t.Errorf("bound %v of %v", b.Value, found.Objective)
	}
	for j, x := range b.Beyond() {
		if x < -1e-9 {
			t.Errorf("sowing %d makes its ground cheaper than the cheapest, by %v", j, -x)
		}
	}
}
