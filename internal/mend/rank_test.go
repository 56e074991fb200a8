package mend

import (
	"testing"

	"garner/internal/plan"
)

// A sowing that comes to the same in two beds is told once, with the other bed beside
// it; one that comes to less is told by itself.
func TestSowingsInBedsAlikeAreToldOnce(t *testing.T) {
	sow := func(bed string, kg float64) Proposal {
		return Proposal{Kind: Sow, Planting: plan.Planting{ID: "new-" + bed, Bed: bed, Crop: "carrot", Use: "storage", AreaM2: 3.6}, GapKg: kg, DropKg: kg}
	}
	got := best([]Proposal{sow("b1", 5), sow("b2", 5), sow("b3", 3)})
	if len(got) != 2 || got[0].Planting.Bed != "b1" || len(got[0].Alike) != 1 || got[0].Alike[0] != "b2" || len(got[1].Alike) != 0 {
		t.Errorf("%+v", got)
	}
}
