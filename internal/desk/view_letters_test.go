package desk

import (
	"testing"

	"garner/internal/plan"
)

func letters(v *VegetableView) map[string]string {
	out := map[string]string{}
	for _, p := range v.Plantings {
		out[p.ID] = p.Letter
	}
	return out
}

// A change that is tried leaves every planting its letter, however the order of
// time turns, and a source bears the letter of its planting.
func TestTryingMovesNoLetter(t *testing.T) {
	o := demoOffice(t)
	standing, err := o.VegetableView("carrot", nil)
	if err != nil {
		t.Fatal(err)
	}
	was := letters(standing)
	moved := 0
	for _, p := range standing.Plantings {
		if !p.Movable {
			continue
		}
		moved++
		day := p.Date + 60
		if moved%2 == 0 {
			day = p.Date - 20
		}
		try := []plan.Change{{Action: "set", Planting: p.ID, Field: "date", Value: day.String()}}
		v, err := o.VegetableView("carrot", try)
		if err != nil {
			t.Fatal(err)
		}
		for id, l := range letters(v) {
			if l != was[id] {
				t.Errorf("with %s moved, %s is %s and was %s", p.ID, id, l, was[id])
			}
		}
		for _, s := range v.Sources {
			if l, planted := was[s.Planting]; planted && s.Letter != l {
				t.Errorf("with %s moved, the source %s is %s and was %s", p.ID, s.Planting, s.Letter, l)
			}
		}
	}
	if moved < 2 {
		t.Fatalf("only %d plantings can be moved", moved)
	}
}

// What is new has the next free letter, though it comes first in time.
func TestNewPlantingsHaveTheNextLetters(t *testing.T) {
	before := &VegetableView{Plantings: []PlantingLine{{ID: "one"}, {ID: "two"}},
		Sources: []SourceView{{Planting: "two", FreshKg: []float64{0, 1}, StoredKg: []float64{0, 0}},
			{Batch: "crate", FreshKg: []float64{0, 0}, StoredKg: []float64{1, 0}}}}
	letter(before)
	after := &VegetableView{Plantings: []PlantingLine{{ID: "new"}, {ID: "one"}, {ID: "two"}},
		Sources: []SourceView{{Planting: "new", FreshKg: []float64{1, 0}, StoredKg: []float64{0, 0}},
			{Batch: "crate", FreshKg: []float64{0, 0}, StoredKg: []float64{1, 0}}}}
	letterAfter(after, before)
	want := map[string]string{"two": "B", "one": "C", "new": "D"}
	for id, l := range letters(after) {
		if l != want[id] {
			t.Errorf("%s is %s, not %s", id, l, want[id])
		}
	}
	if after.Sources[0].Letter != "D" || after.Sources[1].Letter != "A" {
		t.Errorf("sources are %s and %s", after.Sources[0].Letter, after.Sources[1].Letter)
	}
}
