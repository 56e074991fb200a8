package crop

import (
	"slices"
	"testing"
)

// At most three tenths of a crop's own numbers are a relation's.
func TestFewNumbersAreBorrowed(t *testing.T) {
	list := Provenance(load(t))
	if len(list) != len(load(t).Crops()) {
		t.Fatalf("%d tallies of %d crops", len(list), len(load(t).Crops()))
	}
	for _, tally := range list {
		t.Logf("%-20s own %3d: %v; inherited %d", tally.Crop, tally.Own(), tally.Marks, tally.Inherited)
		if share := tally.Share("borrowed"); share > 0.3 {
			t.Errorf("%s: %.0f %% of its own numbers are borrowed", tally.Crop, 100*share)
		}
	}
}

// kinds are the numbers that a plan stands on.
var kinds = map[string][]string{
	"days to maturity": {"days_seed", "days_plant", "days_set"},
	"spacing":          {"in_row_m", "between_row_m"},
	"yield":            {"yield_kg_m2", "yield_low_kg_m2", "yield_high_kg_m2"},
	"hardiness":        {"kill_c", "kill_hardened_c"},
}

// unpublished are the uses for which no printed figure of the kind was found;
// theirs is our own judgement.
var unpublished = map[string][]string{
	"spacing": {"kale leaf"},
	"yield":   {"land-cress leaf", "onion green", "spring-onion summer", "spring-onion overwintered"},
}

// Every use has days, distances, a yield and a hardiness of its own that go back
// to a named work: the figure printed there, or one weighed from it.
func TestPlansStandOnPublishedNumbers(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			for kind, parameters := range kinds {
				known := slices.ContainsFunc(parameters, func(p string) bool { return published(u.Fact(p)) })
				if excused := slices.Contains(unpublished[kind], c.ID+" "+u.Name); known == excused {
					t.Errorf("%s %s: %s from a named work: %t, excused: %t", c.ID, u.Name, kind, known, excused)
				}
			}
		}
	}
}

// published reports whether a number goes back to a named work that prints a
// figure for this very crop.
func published(f Fact) bool {
	named := f.Source != "judgement" && f.Source != "common-practice"
	return named && f.Mark != "borrowed" && (f.Mark != "judgement" || f.Where != "")
}
