package draft_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/plan"
)

// What stood on a bed keeps its kin off it for its years, and off no other bed.
func TestHistoryBarsKin(t *testing.T) {
	h := small(t)
	was := planting("was", "a", "onion", cal.Of(2026, 4, 6), 6, cal.Of(2026, 9, 7))
	was.Plan = h.Plan
	h.Plantings = []plan.Planting{was}
	d := built(t, h)
	in := map[string]int{}
	for j := range d.Columns {
		for _, p := range d.Classes[d.Problem.Sowings[j].Ground].Pieces {
			in[d.Columns[j].Crop.ID+"@"+p.Bed]++
		}
	}
	if in["onion@a"] > 0 || in["onion@b"] == 0 || in["carrot@a"] == 0 {
		t.Errorf("sowings by crop and bed: %v", in)
	}
}

// No ground takes a family that should not come back more often than it has units.
func TestFamiliesComeOnce(t *testing.T) {
	d := built(t, small(t))
	if len(d.Problem.Limits) == 0 {
		t.Fatal("no family is limited")
	}
	s := greedy(d.Problem, 60)
	for _, l := range d.Problem.Limits {
		sum := 0.0
		family := ""
		for _, term := range l.Terms {
			u := d.Columns[term.Sowing].Use
			if u.RotationYears < 1 || family != "" && u.Family != family {
				t.Errorf("%s holds %s of %s", l.ID, u.Crop, u.Family)
			}
			family = u.Family
			sum += term.Weight * float64(s.Units[term.Sowing])
		}
		if sum > l.Most {
			t.Errorf("%s comes to %v of %v", l.ID, sum, l.Most)
		}
	}
}
