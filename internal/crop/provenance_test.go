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
	"days":      {"days_seed", "days_plant", "days_set"},
	"spacing":   {"in_row_m", "between_row_m"},
	"yield":     {"yield_kg_m2", "yield_low_kg_m2", "yield_high_kg_m2"},
	"hardiness": {"kill_c", "kill_hardened_c"},
}

// Every use has days, distances, a yield and a hardiness of its own that go back
// to a named work: the figure printed there, or one weighed from it. For those in
// testdata/unpublished.csv no printed figure was found, and theirs is our own
// judgement.
func TestPlansStandOnPublishedNumbers(t *testing.T) {
	excused := map[string]bool{}
	for _, r := range readTestdata(t, "unpublished.csv") {
		excused[r["crop"]+" "+r["use"]+" "+r["kind"]] = true
	}
	for _, c := range load(t).Crops() {
		for _, u := range c.Uses {
			for kind, parameters := range kinds {
				if kind == "spacing" && !u.Feeds() {
					continue // sown broadcast
				}
				known := slices.ContainsFunc(parameters, func(p string) bool { return published(u.Fact(p)) })
				if known == excused[c.ID+" "+u.Name+" "+kind] {
					t.Errorf("%s %s: %s from a named work: %t; in unpublished.csv: %t", c.ID, u.Name, kind, known, known)
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
