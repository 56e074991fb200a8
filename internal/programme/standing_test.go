package programme

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A trial that is undone leaves everything as it was; one that is kept comes to the
// objective of the same units taken afresh; and a price is the rise it foretells.
func TestTrialsAreUndoneAndKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		s := p.NewStanding()
		for range rapid.IntRange(1, 12).Draw(t, "trials") {
			j := rapid.IntRange(0, len(p.Sowings)-1).Draw(t, "sowing")
			n := 1
			if s.Units[j] > 0 && rapid.Bool().Draw(t, "out") {
				n = -1
			}
			if n > 0 && s.Room(j) == 0 {
				continue
			}
			before, price := s.Objective(), s.Price(Change{j, n})
			s.Shift(j, n)
			rise := s.Settle()
			if math.Abs(rise-price) > 1e-9 {
				t.Fatalf("priced at %v, rose by %v", price, rise)
			}
			if rapid.Bool().Draw(t, "undo") {
				s.Undo()
				if s.Objective() != before {
					t.Fatalf("%v before, %v after it was undone", before, s.Objective())
				}
				continue
			}
			s.Keep()
		}
		if broken := s.Broken(); len(broken) > 0 {
			t.Fatalf("overrun: %v", broken)
		}
		fresh, err := p.Objective(s.Units)
		if err != nil || math.Abs(fresh-s.Objective()) > 1e-9 {
			t.Fatalf("%v afresh, %v on the way: %v", fresh, s.Objective(), err)
		}
	})
}

// More of what may be eaten never makes feeding dearer than what goes over costs.
func TestMoreFoodNeverLeavesMoreLacking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		for d := range p.Demands {
			p.Demands[d].OverCost = 0
		}
		s := p.NewStanding()
		for j := range p.Sowings {
			if s.Price(Change{j, 1}) > p.Sowings[j].Cost+1e-9 {
				t.Fatalf("a unit of sowing %d makes more lack", j)
			}
		}
	})
}

// Overrun rows are told, each by its name.
func TestBrokenRowsAreTold(t *testing.T) {
	p := &Problem{Weeks: 1, Futures: []int{0}, Grounds: []Ground{{ID: "bed", UnitM2: 1, Units: 1}},
		Resources: []Resource{{ID: "hours", PerWeek: []float64{1}}},
		Demands:   []Demand{{ID: "kale"}},
		Sowings:   []Sowing{{ID: "a", Lots: [][]Lot{nil}, Most: 1, Uses: []Use{{Amount: 1}}}},
		Limits:    []Limit{{ID: "kin", Terms: []Term{{0, 1}}, Most: 1}}}
	if err := p.Sound(); err != nil {
		t.Fatal(err)
	}
	s, err := p.Of(Solution{2})
	if err != nil {
		t.Fatal(err)
	}
	if broken := s.Broken(); len(broken) != 4 {
		t.Errorf("told: %v", broken)
	}
	if _, err := p.Of(Solution{1, 1}); err == nil {
		t.Error("a solution of another problem is taken")
	}
	if _, err := p.Of(Solution{-1}); err == nil {
		t.Error("fewer than no units are taken")
	}
	p.Sowings[0].Ground = 3
	if p.Sound() == nil {
		t.Error("a sowing on ground that is not there is sound")
	}
}
