package desk

import (
	"slices"
	"testing"
)

// What goes over for want of room, and for want of time in the kitchen, is told apart.
func TestWhatTheStoresAndTheKitchenHaveNoRoomForIsTold(t *testing.T) {
	told := func(kitchenH, capacityKg float64) (full, late float64, keys []string) {
		h := *sampleHolding(t)
		h.KitchenH, h.Batches, h.Stores = kitchenH, nil, slices.Clone(h.Stores)
		for i := range h.Stores {
			if capacityKg > 0 {
				h.Stores[i].CapacityKg, h.Stores[i].Litres, h.Stores[i].Jars = capacityKg, 0, 0
			}
		}
		v, err := Larder(&h, OutlookOptions{Years: 12, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for i := range v.Surplus {
			s := &v.Surplus[i]
			full, late = full+s.FullKg, late+s.NoTimeKg
			for _, w := range s.Wants {
				keys = append(keys, w.Key)
			}
		}
		return full, late, keys
	}
	if _, late, keys := told(0, 0); late != 0 || slices.Contains(keys, "desk.surplus_no_time") {
		t.Errorf("%g kg for want of time where it is not limited: %v", late, keys)
	}
	if _, late, keys := told(0.1, 0); late <= 0 || !slices.Contains(keys, "desk.surplus_no_time") {
		t.Errorf("%g kg for want of time in 0.1 h a week: %v", late, keys)
	}
	if full, _, keys := told(0, 1); full <= 0 || !slices.Contains(keys, "desk.surplus_no_room") {
		t.Errorf("%g kg for want of room in stores of 1 kg: %v", full, keys)
	}
}
