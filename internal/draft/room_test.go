package draft_test

import (
	"math"
	"testing"

	"garner/internal/larder"
	"garner/internal/outlook"
)

// What lies in a store leaves no room for what is drafted, until it is eaten; a store in
// which nothing lies has all of its room.
func TestKeptFoodTakesRoom(t *testing.T) {
	h := small(t)
	h.Stores = append(h.Stores, larder.Store{ID: "sand", Name: "sand", Method: "damp sand", WinterC: 5, SummerC: 14, CapacityKg: 30})
	h.Wants = append(h.Wants, larder.Want{ID: "z", Vegetable: "potato", KgPerWeek: 2})
	h.Batches = []larder.Batch{{ID: "b", Store: "shed", Crop: "potato", Use: "maincrop", Kg: 50, Stored: h.Today}}
	table, err := outlook.Compute(setting(t, h).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	d := built(t, h)
	shed, sand := d.Problem.Resources[0].PerWeek, d.Problem.Resources[1].PerWeek
	lies := 0.0
	for _, s := range table.Stores {
		if s.Store == "shed" {
			for _, level := range s.LevelKg {
				lies += float64(level[0]) / float64(len(s.LevelKg))
			}
		}
	}
	if lies < 40 || math.Abs(80-lies-shed[0]) > 1e-3 {
		t.Errorf("%.3f kg lie in a shed for 80 kg, and there is room for %.3f kg", lies, shed[0])
	}
	for week := range shed {
		if week > 0 && shed[week] < shed[week-1] || sand[week] != 30 {
			t.Errorf("week %d: room for %.3f kg in the shed and %.3f kg in the sand", week, shed[week], sand[week])
		}
	}
	if shed[len(shed)-1] != 80 {
		t.Errorf("the potatoes are gone and there is room for %.3f kg", shed[len(shed)-1])
	}
}
