package outlook_test

import (
	"testing"

	"garner/internal/outlook"
)

// The hours of the kitchen are one budget for all that is preserved, whatever
// store it goes to: little time puts little by, and time enough changes nothing.
func TestKitchenHoursAreSharedByTheStores(t *testing.T) {
	given := func(hours float64) float64 {
		h := small()
		h.KitchenH, h.Batches = hours, nil
		h.Stores[0].Method, h.Stores[0].WinterC, h.Stores[0].SummerC = "frozen", -18, -18
		h.Stores[1].Method, h.Stores[1].WinterC, h.Stores[1].SummerC = "frozen", -18, -18
		table := compute(t, setting(t, h, 2), outlook.NewMemory())
		return storedOf(table, "carrot") + storedOf(table, "onion")
	}
	free, ample, little, least := given(0), given(100), given(0.4), given(0.1)
	if free != ample {
		t.Errorf("%g kg from store with no limit, %g with time enough", free, ample)
	}
	if !(least < little && little < free) || least <= 0 {
		t.Errorf("%g kg from store in 0.1 h, %g in 0.4 h, %g unlimited", least, little, free)
	}
}
