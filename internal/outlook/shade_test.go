package outlook_test

import (
	"reflect"
	"testing"

	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
)

// drawn is the small holding on a plan, a wall along the south of its first bed.
func drawn() *holding.Holding {
	h := small()
	h.Sites[0].PlanWidthM, h.Sites[0].PlanDepthM = 12, 12
	h.Beds[0].At, h.Beds[1].At = place.Spot{XM: 6, YM: 3}, place.Spot{XM: 6, YM: 9}
	h.Features = []place.Feature{{ID: "w", Site: "s", Name: "Wall", Kind: place.Wall, At: place.Spot{XM: 6, YM: 1.8}, LengthM: 10, WidthM: 0.3, HeightM: 2.2}}
	return h
}

// A wall to the south costs its bed weight, and moving the wall, the bed or the
// top of the plan changes a table in memory to what a cold run gives.
func TestShadeReachesTheTable(t *testing.T) {
	open, walled := small(), drawn()
	fresh := func(h *holding.Holding, m *outlook.Memory) *outlook.Summary {
		return compute(t, setting(t, h, 2), m).Summarise(false)
	}
	sum := func(s *outlook.Summary, name string) (kg float64) {
		for _, v := range s.Vegetables {
			if v.Name == name {
				for k := range v.Short {
					kg += v.Short[k]
				}
			}
		}
		return kg
	}
	a, b := fresh(open, outlook.NewMemory()), fresh(walled, outlook.NewMemory())
	if !(sum(b, "carrot") > sum(a, "carrot")*1.05) {
		t.Errorf("carrots are short by %.1f kg behind the wall, %.1f kg in the open", sum(b, "carrot"), sum(a, "carrot"))
	}
	memory := outlook.NewMemory()
	before := fresh(drawn(), memory)
	for name, edit := range map[string]func(*holding.Holding){
		"wall higher":   func(h *holding.Holding) { h.Features[0].HeightM = 3.5 },
		"wall gone":     func(h *holding.Holding) { h.Features = nil },
		"bed moved":     func(h *holding.Holding) { h.Beds[0].At.YM = 7 },
		"plan turned":   func(h *holding.Holding) { h.Sites[0].UpDeg = 180 },
		"lets through":  func(h *holding.Holding) { h.Features[0].ThroughLeaf = 0.5 },
		"bed not drawn": func(h *holding.Holding) { h.Beds[0].At = place.Spot{} },
	} {
		h := drawn()
		edit(h)
		warm, cold := fresh(h, memory), fresh(h, outlook.NewMemory())
		if !reflect.DeepEqual(warm, cold) {
			t.Errorf("%s: the table after the edit is not the cold one", name)
		}
		if reflect.DeepEqual(warm, before) {
			t.Errorf("%s: nothing changed", name)
		}
	}
}
