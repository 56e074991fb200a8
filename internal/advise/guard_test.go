package advise_test

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/demotest"
	"garner/internal/place"
	"garner/internal/plan"
)

// South of the equator pests fly from October to April: a mesh that lies over kale
// for that time keeps them out, and not for a part of the time only.
func TestCoversAreHeldToTheSouthsSummer(t *testing.T) {
	h := demotest.Holding(t, "south")
	on, off := cal.Of(2027, 10, 10), cal.Of(2028, 4, 20)
	h.Covers = append(h.Covers, place.CoverSpell{ID: "summer", Bed: "n3", Spell: cover.Spell{Kind: cover.Mesh, On: on, Off: off, MeshMM: 0.8}})
	a := adviser(t, h, 10)
	p := plan.New("kal-27z", h.Plan)
	p.Bed, p.Crop, p.Use, p.Method, p.Date, p.ClearBy, p.AreaM2 = "n3", "kale", "plant", plan.Plant, on, cal.Of(2028, 10, 1), 1
	keys := ""
	for _, phrase := range a.Remarks(&p) {
		keys += phrase.Key + " "
	}
	if !strings.Contains(keys, "protect.keeps") || strings.Contains(keys, "protect.part") {
		t.Errorf("told of kale under mesh all summer: %s", keys)
	}
}
