package outlook_test

import (
	"reflect"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// A green manure on ground of its own covers it, is told among the plantings,
// and leaves every row of the table as it was (our own rule).
func TestGreenManureChangesNoRow(t *testing.T) {
	before := compute(t, setting(t, small(), 2), outlook.NewMemory())
	h := small()
	h.Plantings = append(h.Plantings, plan.Planting{ID: "p9", Plan: "p", Bed: "b1", Crop: "winter-rye", Use: "cover",
		Method: plan.Seed, Date: cal.Of(2027, 9, 5), AreaM2: 1, ClearBy: cal.Of(2028, 3, 20)})
	m := outlook.NewMemory()
	s := setting(t, h, 2)
	after := compute(t, s, m)
	if !reflect.DeepEqual(before.Vegetables, after.Vegetables) || !reflect.DeepEqual(before.Stores, after.Stores) {
		t.Error("a green manure moves a row of the table")
	}
	at := slices.IndexFunc(after.Plantings, func(f outlook.Fate) bool { return f.Planting == "p9" })
	if at < 0 {
		t.Fatal("the green manure is not among the plantings")
	}
	covered := 0
	for _, y := range after.Plantings[at].Years {
		if len(y.Flow) > 0 || len(y.Standing) > 0 {
			t.Error("a green manure gave food")
		}
		if y.Ready >= 0 {
			covered++
		}
	}
	if years := len(after.Plantings[at].Years); covered < years*9/10 {
		t.Errorf("rye of early September covers its ground in %d years of %d", covered, years)
	}
}
