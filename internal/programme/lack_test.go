package programme

import "testing"

// What lacks is the first of ground, resource and limit that has no room for one unit
// more, and taking out a sowing that shares it makes the room.
func TestWhatLacks(t *testing.T) {
	lots := [][]Lot{{{First: 2, Last: 3, Kg: 1}}}
	p := &Problem{Weeks: 4, Futures: []int{0},
		Grounds:   []Ground{{ID: "bed", UnitM2: 1, Units: 2, Last: 3}, {ID: "frame", UnitM2: 1, Units: 5, Last: 3}},
		Resources: []Resource{{ID: "shed", PerWeek: []float64{3, 3, 3, 3}}},
		Demands:   []Demand{{ID: "leek", Levels: []Level{{PerWeek: []float64{0, 0, 4, 4}, Cost: 1}}}},
		Limits:    []Limit{{ID: "rotation", Terms: []Term{{Sowing: 2, Weight: 1}, {Sowing: 3, Weight: 1}}, Most: 1}},
		Sowings: []Sowing{
			{ID: "early", Ground: 0, First: 0, Last: 1, Lots: lots, Most: 9},
			{ID: "late", Ground: 0, First: 1, Last: 3, Lots: lots, Most: 9, Uses: []Use{{0, 3, 2}}},
			{ID: "under glass", Ground: 1, First: 0, Last: 3, Lots: lots, Most: 9, Uses: []Use{{0, 3, 2}}},
			{ID: "bare", Ground: 1, First: 0, Last: 3, Lots: lots, Most: 9},
		}}
	s := p.NewStanding()
	if l, lacks := s.Lacks(0); lacks {
		t.Fatalf("nothing is taken, and %v lacks", l)
	}
	s.Add(0, 2)
	check := func(j int, want Lack, other int, relieves bool) {
		t.Helper()
		l, lacks := s.Lacks(j)
		if !lacks || l != want || s.Room(j) != 0 {
			t.Errorf("%s: %v lacks (%v), want %v", p.Sowings[j].ID, l, lacks, want)
		}
		if s.Relieves(other, l) != relieves {
			t.Errorf("%s makes room for %s: %v", p.Sowings[other].ID, p.Sowings[j].ID, !relieves)
		}
	}
	check(1, Lack{Ground: 0, Resource: -1, Limit: -1, Week: 1}, 0, true)
	check(1, Lack{Ground: 0, Resource: -1, Limit: -1, Week: 1}, 2, false)
	s.Add(0, -2)
	s.Add(1, 1)
	check(2, Lack{Ground: -1, Resource: 0, Limit: -1, Week: 3}, 1, true)
	check(2, Lack{Ground: -1, Resource: 0, Limit: -1, Week: 3}, 3, false)
	s.Add(1, -1)
	s.Add(3, 1)
	check(2, Lack{Ground: -1, Resource: -1, Limit: 0, Week: -1}, 3, true)
}
