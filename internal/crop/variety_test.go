package crop

import (
	"math"
	"strings"
	"testing"
)

func TestVarietyMovesAUse(t *testing.T) {
	u := use(t, load(t), "leek", "winter")
	v := u.WithVariety(Variety{Name: "Moorland", DaysOffset: 10, YieldFactor: 1.2, KillShiftC: -3, BoltFactor: 1.5, SizeFactor: 0.8})
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	near("days from sowing", v.DaysSeed, u.DaysSeed+10)
	near("days from planting", v.DaysPlant, u.DaysPlant+10)
	near("days from sets, which it has not", v.DaysSet, 0)
	near("yield", v.YieldKgM2, 1.2*u.YieldKgM2)
	near("yield scale", v.YieldScale, 1.2*u.YieldScale)
	near("hardened kill", v.KillHardenedC, u.KillHardenedC-3)
	near("time to bolting", v.BoltThermalCd, 1.5*u.BoltThermalCd)
	near("piece", v.PieceG, 0.8*u.PieceG)
	if f := v.Fact("days_seed"); f.Value != v.DaysSeed || !strings.Contains(f.Note, "Moorland") {
		t.Errorf("provenance of a moved number: %+v", f)
	}
	if f := v.Fact("base_c"); strings.Contains(f.Note, "Moorland") {
		t.Errorf("provenance of a number that stayed: %+v", f)
	}
}

func TestVarietyWithoutFiguresChangesNothing(t *testing.T) {
	u := use(t, load(t), "carrot", "table")
	v := u.WithVariety(Variety{Name: "Plain"})
	for _, p := range u.resolved.parameters {
		if p.get(u) != p.get(&v) {
			t.Errorf("%s is moved from %g to %g", p.Name, p.get(u), p.get(&v))
		}
	}
}

func TestVarietyStaysWithinTheBooksDays(t *testing.T) {
	u := use(t, load(t), "radish", "summer")
	if v := u.WithVariety(Variety{DaysOffset: -500}); v.DaysSeed != 15 {
		t.Errorf("%g days, want the book's least, 15", v.DaysSeed)
	}
}
