package crop

import (
	"math"
	"slices"
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
	near("size at the table", v.TableG, 0.8*u.TableG)
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

// Each figure of a variety moves its own numbers and no others, in every use of
// the book, and the provenance of what it moved names the variety.
func TestEachFigureOfAVarietyMovesItsOwnNumbers(t *testing.T) {
	for _, c := range []struct {
		what    string
		variety Variety
		moves   []string
	}{
		{"earlier", Variety{DaysOffset: -4}, []string{"days_seed", "days_plant", "days_set"}},
		{"later", Variety{DaysOffset: 4}, []string{"days_seed", "days_plant", "days_set"}},
		{"hardier", Variety{KillShiftC: -2}, []string{"kill_young_c", "kill_c", "kill_hardened_c"}},
		{"more tender", Variety{KillShiftC: 2}, []string{"kill_young_c", "kill_c", "kill_hardened_c"}},
		{"bolt-resistant", Variety{BoltFactor: 1.5}, []string{"bolt_thermal_cd"}},
		{"large", Variety{SizeFactor: 1.25}, []string{"piece_g", "usable_g", "table_g"}},
		{"heavy", Variety{YieldFactor: 1.1}, []string{"yield_scale", "yield_kg_m2", "yield_low_kg_m2", "yield_high_kg_m2"}},
	} {
		c.variety.Name = "Sort"
		for _, crop := range load(t).Crops() {
			for _, u := range crop.Uses {
				v := u.WithVariety(c.variety)
				for _, p := range u.resolved.parameters {
					moved := p.get(&v) != p.get(u)
					want := slices.Contains(c.moves, p.Name) && p.get(u) != 0 || p.Name[:4] == "kill" && c.variety.KillShiftC != 0
					if p.Scope == "crop" && p.Unit == "d" && p.get(u) == p.Max && c.variety.DaysOffset > 0 {
						want = false // the book allows no more
					}
					if moved != want {
						t.Errorf("%s %s, %s: %s is moved: %t, want %t", crop.ID, u.Name, c.what, p.Name, moved, want)
					}
					if fact := v.Fact(p.Name); moved && (fact.Value != p.get(&v) || !strings.Contains(fact.Note, "Sort")) {
						t.Errorf("%s %s, %s: provenance of %s is %+v", crop.ID, u.Name, c.what, p.Name, fact)
					}
				}
			}
		}
	}
}

// A variety as hardy as it likes keeps its three limits in order.
func TestVarietyKeepsItsNumbersInOrder(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			v := u.WithVariety(Variety{Name: "Sort", DaysOffset: -6, YieldFactor: 1.3, KillShiftC: -4, BoltFactor: 2, SizeFactor: 0.7})
			if bad, _ := contradiction(&v); bad != nil {
				t.Error(bad)
			}
			if v.TableG != 0 && (v.TableG < v.UsableG || v.TableG > v.PieceG) {
				t.Errorf("%s %s: table size %g g outside %g to %g", c.ID, u.Name, v.TableG, v.UsableG, v.PieceG)
			}
		}
	}
}
