package desk

import (
	"testing"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/plan"
)

// A plan is found by its id before its name, whatever the letters' case, and a name
// that two have is refused.
func TestPlansAreFoundByName(t *testing.T) {
	h := &holding.Holding{Plans: []plan.Plan{{ID: "a", Name: "One"}, {ID: "one", Name: "Other"}, {ID: "b", Name: "Twice"}, {ID: "c", Name: "twice"}}}
	for given, want := range map[string]string{"a": "a", "A": "a", "one": "one", "Other": "one", "c": "c"} {
		if p, err := namedPlan(h, given); err != nil || p.ID != want {
			t.Errorf("%s: %s, %v", given, p.ID, err)
		}
	}
	for given, kind := range map[string]fault.Kind{"Twice": fault.Conflict, "othr": fault.NotFound, "zzzzzzz": fault.NotFound, "": fault.NotFound} {
		if _, err := namedPlan(h, given); err == nil || fault.KindOf(err) != kind {
			t.Errorf("%s: %v", given, err)
		}
	}
	if _, err := namedPlan(&holding.Holding{}, "a"); fault.KindOf(err) != fault.NotFound {
		t.Errorf("without plans: %v", err)
	}
}
