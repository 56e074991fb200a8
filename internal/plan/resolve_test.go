package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/fault"
)

var (
	testPlans = []Plan{{ID: "main"}, {ID: "draft", Base: "main"}, {ID: "later", Base: "draft"}}
	carrots   = Planting{ID: "carrots", Plan: "main", Bed: "b1", Crop: "carrot", Date: cal.Of(2027, 4, 1), AreaM2: 3, ClearBy: cal.None, StripOn: cal.None}
	leeks     = Planting{ID: "leeks", Plan: "main", Bed: "b2", Crop: "leek", Method: Plant, Date: cal.Of(2027, 6, 1), AreaM2: 4, ClearBy: cal.None, StripOn: cal.None}
)

func TestResolveMakesTheChangesInOrder(t *testing.T) {
	given := []Planting{carrots, leeks, {ID: "elsewhere", Plan: "other"}}
	changes := []Change{
		{ID: "4", Plan: "later", Order: 1, Action: "set", Planting: "radish", Field: "date", Value: "2027-03-20"},
		{ID: "2", Plan: "draft", Order: 2, Action: "set", Planting: "carrots", Field: "area_m2", Value: "2,5"},
		{ID: "1", Plan: "draft", Order: 1, Action: "set", Planting: "carrots", Field: "area_m2", Value: "9"},
		{ID: "3", Plan: "draft", Order: 3, Action: "remove", Planting: "leeks"},
		{ID: "5", Plan: "draft", Order: 4, Action: "add", Planting: "radish", Value: "bed=b1; crop=radish; date=2027-03-10; area_m2=1; relation=between; to=carrots"},
	}
	smaller := carrots
	smaller.AreaM2 = 2.5
	radish := Planting{ID: "radish", Plan: "draft", Bed: "b1", Crop: "radish", Date: cal.Of(2027, 3, 10), AreaM2: 1, Relation: Between, To: "carrots", ClearBy: cal.None, StripOn: cal.None}
	later := radish
	later.Date = cal.Of(2027, 3, 20)
	for id, want := range map[string][]Planting{
		"main":  {carrots, leeks},
		"draft": {smaller, radish},
		"later": {smaller, later},
	} {
		got, faults := Resolve(testPlans, given, changes, id)
		if len(faults) > 0 {
			t.Errorf("%s: %v", id, faults)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", id, diff)
		}
	}
	if given[0] != carrots || given[1] != leeks {
		t.Error("the plantings given were altered")
	}
}

func TestResolveReportsEveryChangeThatCannotBeMade(t *testing.T) {
	add := "bed=b1;crop=radish;date=2027-03-10;area_m2=1"
	cases := []struct {
		change      Change
		key, column string
	}{
		{Change{Action: "move", Planting: "carrots"}, "plan.action_unknown", "action"},
		{Change{Action: "set", Planting: "nothing", Field: "bed", Value: "b1"}, "plan.planting_unknown", "planting"},
		{Change{Action: "remove", Planting: "nothing"}, "plan.planting_unknown", "planting"},
		{Change{Action: "set", Planting: "carrots", Field: "beds", Value: "b1"}, "plan.field_unknown_near", "field"},
		{Change{Action: "set", Planting: "carrots", Field: "colour", Value: "b1"}, "plan.field_unknown", "field"},
		{Change{Action: "set", Planting: "carrots", Field: "bed"}, "plan.value_blank", "value"},
		{Change{Action: "set", Planting: "carrots", Field: "area_m2", Value: "1,250"}, "plan.value_number", "value"},
		{Change{Action: "set", Planting: "carrots", Field: "date_within_d", Value: "2.5"}, "plan.value_whole", "value"},
		{Change{Action: "set", Planting: "carrots", Field: "date", Value: "1 April"}, "plan.value_date", "value"},
		{Change{Action: "set", Planting: "carrots", Field: "method", Value: "throw"}, "plan.value_not_allowed", "value"},
		{Change{Action: "add", Planting: "carrots", Value: add}, "plan.planting_exists", "planting"},
		{Change{Action: "add", Planting: "new", Value: add + ";use"}, "plan.list_piece", "value"},
		{Change{Action: "add", Planting: "new", Value: add + ";bed=b2"}, "plan.list_twice", "value"},
		{Change{Action: "add", Planting: "new", Value: "bed=b1"}, "plan.list_incomplete", "value"},
	}
	var changes []Change
	for i, c := range cases {
		c.change.Plan, c.change.Order = "draft", i
		changes = append(changes, c.change)
	}
	got, faults := Resolve(testPlans, []Planting{carrots}, changes, "draft")
	if diff := cmp.Diff([]Planting{carrots}, got); diff != "" {
		t.Error(diff)
	}
	if len(faults) != len(cases) {
		t.Fatalf("%d faults of %d:\n%v", len(faults), len(cases), faults)
	}
	for i, c := range cases {
		want := fault.Place{File: "changes.csv", Row: i + 2, Column: c.column}
		if faults[i].Phrase.Key != c.key || faults[i].At != want {
			t.Errorf("%v, want %s at %v", faults[i], c.key, want)
		}
	}
}

func TestResolveFollowsOnlyRealBases(t *testing.T) {
	ring := []Plan{{ID: "a", Base: "b"}, {ID: "b", Base: "a"}, {ID: "c", Base: "gone"}}
	for id, key := range map[string]string{"a": "plan.base_cycle", "c": "plan.unknown", "x": "plan.unknown"} {
		if _, faults := Resolve(ring, nil, nil, id); len(faults) != 1 || faults[0].Phrase.Key != key {
			t.Errorf("%q: %v", id, faults)
		}
	}
}

func TestBlankClearsWhatMayBeBlank(t *testing.T) {
	p := Planting{Use: "table", Variety: "v", Method: Seed, Relation: After, To: "x", ClearBy: 1, Store: "s", YearsOld: 2, DateWithinD: 3, AreaWithin: 0.2, InRowM: 1, BetweenRowM: 1, StripOn: 1, StripShare: 0.1, Stock: OwnStock, SeedPlants: 2}
	for _, name := range []string{"use", "variety", "method", "relation", "to", "clear_by", "store", "years_old", "date_within_d", "area_within", "in_row_m", "between_row_m", "strip_on", "strip_share", "stock", "seed_plants"} {
		if err := SetField(&p, name, " "); err != nil {
			t.Error(err)
		}
	}
	if p != (Planting{ClearBy: cal.None, StripOn: cal.None}) {
		t.Errorf("%+v", p)
	}
}

// A change that sets what is set already leaves the plan as it was.
func TestSettingTheSameAgainChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(Fields()).Draw(t, "field")
		value := rapid.SampledFrom([]string{"", "b1", "seed", "under", "2027-05-01", "2.5", "0"}).Draw(t, "value")
		once := carrots
		if SetField(&once, name, value) != nil {
			if once != carrots {
				t.Fatal("altered in spite of a fault")
			}
			return
		}
		twice := once
		if err := SetField(&twice, name, value); err != nil || once != twice {
			t.Fatalf("%v: %+v, %+v", err, once, twice)
		}
	})
}
