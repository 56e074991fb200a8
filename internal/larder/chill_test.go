package larder

import (
	"testing"

	"garner/internal/crop"
)

// way is the book's row for a crop and use kept by a method.
func way(t *testing.T, id, use, method string) crop.Storage {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	c, known := book.Crop(id)
	if !known {
		t.Fatalf("no crop %s", id)
	}
	u, err := c.Use(use)
	if err != nil {
		t.Fatal(err)
	}
	row, keeps := u.Way(method)
	if !keeps {
		t.Fatalf("%s does not keep by %s", id, method)
	}
	return row
}

// Crops that chilling harms keep less long when too cold, from near the lowest safe
// temperature that is printed for them (to 2 C), and at 0 C less than two thirds as long.
func TestChilledCropsKeepLessLongTooCold(t *testing.T) {
	for _, row := range table(t, "lowest_safe.csv") {
		s := way(t, row["crop"], row["use"], row["method"])
		if low, high := number(t, row, "low_c"), number(t, row, "high_c"); s.FloorC < low-2 || s.FloorC > high+2 {
			t.Errorf("%s: chilled below %g C, printed %g to %g", row["crop"], s.FloorC, low, high)
		}
		if cold := LifeDays(s, 0); cold > 0.67*s.LifeDays {
			t.Errorf("%s: %.1f days at 0 C, %.1f at best", row["crop"], cold, s.LifeDays)
		}
	}
}

// Dormant bulbs go by their rest: 10 C more cost them a fifth of their life at most, where
// they cost a leaf more than half. Handbook 66's rates of respiration: onion 7 and 8 at 10
// and 20 C, garlic 24 and 20, spinach 110 and 230, calabrese 81 and 300.
func TestDormantBulbsHardlyFeelWarmth(t *testing.T) {
	for _, c := range []struct{ id, use, method string }{{"onion", "sets", "hung"}, {"onion", "seed", "nets"}, {"shallot", "", "hung"}, {"garlic", "softneck", "cool shed"}, {"garlic", "hardneck", "hung"}} {
		s := way(t, c.id, c.use, c.method)
		if share := LifeDays(s, 20) / LifeDays(s, 10); share < 0.8 || share > 1 {
			t.Errorf("%s, %s: 20 C leaves %.2f of the life at 10 C", c.id, c.method, share)
		}
	}
	for _, id := range []string{"spinach", "calabrese"} {
		s := way(t, id, "", "fridge")
		if share := LifeDays(s, 20) / LifeDays(s, 10); share > 0.5 {
			t.Errorf("%s: 20 C leaves %.2f of the life at 10 C", id, share)
		}
	}
}
