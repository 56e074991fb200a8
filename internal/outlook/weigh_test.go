package outlook_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
)

// expectedShort is the expected shortage of a whole table [kg].
func expectedShort(t *outlook.Table) float64 {
	sum := 0.0
	for _, w := range t.Summarise(false).Vegetables {
		for _, kg := range w.Short {
			sum += kg
		}
	}
	return sum
}

// made is a holding with an edit made in its plantings.
func made(h *holding.Holding, e outlook.Edit) *holding.Holding {
	own := *h
	own.Covers = append(own.Covers[:len(own.Covers):len(own.Covers)], e.Covers...)
	own.Plantings = nil
	used := map[string]bool{}
	for _, p := range h.Plantings {
		keep := true
		for _, id := range e.Remove {
			keep = keep && id != p.ID
		}
		for _, n := range e.Set {
			if n.ID == p.ID {
				p, used[n.ID] = n, true
			}
		}
		if keep {
			own.Plantings = append(own.Plantings, p)
		}
	}
	for _, n := range e.Set {
		if !used[n.ID] {
			own.Plantings = append(own.Plantings, n)
		}
	}
	return &own
}

// edits are of every kind: onto a bed in use, onto a bed that is empty or later
// in use, into a store that joins two groups, earlier clearing, a move, removal.
func edits(h *holding.Holding) map[string]outlook.Edit {
	add := func(id, bed, crop, use string, date cal.Date, store string) plan.Planting {
		p := plan.New(id, "p")
		p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2, p.Store = bed, crop, use, plan.Seed, date, 2, store
		return p
	}
	cleared := h.Plantings[1]
	cleared.ClearBy = cal.Of(2027, 9, 1)
	moved := h.Plantings[0]
	moved.Bed, moved.Date = "b2", moved.Date+30
	under := add("n5", "b1", "spinach", "", cal.Of(2027, 6, 1), "")
	under.Relation, under.To = plan.Under, "p2"
	unstored, keeps := h.Plantings[1], add("n8", "b1", "carrot", "storage", cal.Of(2027, 6, 1), "sand")
	unstored.Store = ""
	eaten := keeps
	eaten.Store = ""
	lifted := add("n7", "b2", "beetroot", "", cal.Of(2027, 7, 1), "")
	lifted.Relation, lifted.To = plan.Moved, "p1"
	return map[string]outlook.Edit{
		"lifted":       {Set: []plan.Planting{lifted}},
		"nothing":      {},
		"added":        {Set: []plan.Planting{add("n1", "b1", "carrot", "early", cal.Of(2027, 7, 1), "")}},
		"before all":   {Set: []plan.Planting{add("n2", "b2", "beetroot", "", cal.Of(2026, 6, 1), "")}},
		"stored":       {Set: []plan.Planting{add("n3", "b1", "beetroot", "storage", cal.Of(2027, 6, 1), "sand")}},
		"not wanted":   {Set: []plan.Planting{add("n4", "b1", "spinach", "", cal.Of(2027, 4, 1), "")}},
		"under":        {Set: []plan.Planting{under}},
		"cleared":      {Set: []plan.Planting{cleared}},
		"moved":        {Set: []plan.Planting{moved}},
		"not stored":   {Set: []plan.Planting{unstored}},
		"one stored":   {Set: []plan.Planting{keeps}},
		"one eaten":    {Set: []plan.Planting{eaten}},
		"covered":      {Covers: []place.CoverSpell{{ID: "n9", Bed: "b1", Spell: cover.Spell{Kind: cover.Tunnel, On: cal.Of(2027, 3, 1), Off: cal.None}}}},
		"taken out":    {Remove: []string{"p3"}},
		"and followed": {Set: []plan.Planting{cleared, add("n6", "b1", "carrot", "early", cal.Of(2027, 9, 5), "")}},
	}
}

// What an edit weighs is the difference of two full tables.
func TestWeightIsTheDifferenceOfTwoTables(t *testing.T) {
	h := small()
	scales, err := outlook.NewScales(setting(t, h, 2), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	before := expectedShort(scales.Table)
	var names []string
	var list []outlook.Edit
	for name, e := range edits(h) {
		names, list = append(names, name), append(list, e)
	}
	weights, err := scales.Weigh(list)
	if err != nil {
		t.Fatal(err)
	}
	moved := 0
	for i, name := range names {
		after := compute(t, setting(t, made(h, list[i]), 2), outlook.NewMemory())
		full := before - expectedShort(after)
		sameChances(t, name, &weights[i], after)
		overFalls(t, name, &weights[i], scales.Table, after)
		if math.Abs(full-weights[i].DropKg) > 1e-5 {
			t.Errorf("edit %q weighs %.6f kg, two tables differ by %.6f", name, weights[i].DropKg, full)
		}
		if math.Abs(full) > 0.5 {
			moved++
		}
	}
	if moved < 4 {
		t.Errorf("only %d edits weigh anything", moved)
	}
}

func TestWorkersChangeNoWeight(t *testing.T) {
	h := small()
	list := []outlook.Edit{}
	for _, name := range []string{"added", "stored", "cleared"} {
		list = append(list, edits(h)[name])
	}
	var first []outlook.Weight
	for _, workers := range []int{1, 3} {
		scales, err := outlook.NewScales(setting(t, h, workers), outlook.NewMemory())
		if err != nil {
			t.Fatal(err)
		}
		weights, err := scales.Weigh(list)
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = weights
			continue
		}
		for i := range weights {
			if weights[i].DropKg != first[i].DropKg {
				t.Errorf("edit %d: %v with %d workers, %v with one", i, weights[i].DropKg, workers, first[i].DropKg)
			}
		}
	}
}

// Setting a planting as it stands, or nothing at all, weighs nothing.
func TestNothingWeighsNothing(t *testing.T) {
	h := small()
	scales, err := outlook.NewScales(setting(t, h, 2), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		e := outlook.Edit{Set: rapid.SliceOfDistinct(rapid.SampledFrom(h.Plantings), func(p plan.Planting) string { return p.ID }).Draw(t, "set")}
		weights, err := scales.Weigh([]outlook.Edit{e})
		if err != nil || weights[0].DropKg != 0 || len(weights[0].Drops) != 0 {
			t.Fatalf("%v, %v", weights, err)
		}
	})
}

func TestAnEditOfAnUnknownBedIsRefused(t *testing.T) {
	scales, err := outlook.NewScales(setting(t, small(), 1), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	p := small().Plantings[0]
	p.ID, p.Bed = "n", "nowhere"
	if _, err := scales.Weigh([]outlook.Edit{{Set: []plan.Planting{p}}}); err == nil {
		t.Error("taken")
	}
}

// sameChances holds the chances told of an edit to those of the table with it.
func sameChances(t *testing.T, name string, w *outlook.Weight, after *outlook.Table) {
	t.Helper()
	for _, its := range after.Summarise(false).Vegetables {
		for _, d := range w.Drops {
			for k := range d.Chance {
				if d.Vegetable == its.Name && math.Abs(d.Chance[k]-its.GapChance[k]) > 1e-9 {
					t.Errorf("edit %q: %s is short with chance %.3f in week %d, the table says %.3f", name, its.Name, d.Chance[k], k, its.GapChance[k])
				}
			}
		}
	}
}

// overFalls holds what an edit does to what goes over to two tables.
func overFalls(t *testing.T, name string, w *outlook.Weight, before, after *outlook.Table) {
	t.Helper()
	over := map[string]float64{}
	for sign, table := range map[float64]*outlook.Table{1: before, -1: after} {
		for _, v := range table.Summarise(false).Vegetables {
			for _, kg := range v.Over {
				over[v.Name] += sign * kg
			}
		}
	}
	for _, d := range w.Drops {
		if math.Abs(d.OverKg-over[d.Vegetable]) > 1e-3 {
			t.Errorf("edit %q: %.4f kg less of %s go over, two tables differ by %.4f", name, d.OverKg, d.Vegetable, over[d.Vegetable])
		}
	}
}
