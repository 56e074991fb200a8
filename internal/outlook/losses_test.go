package outlook_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/record"
)

// eaten is what comes to the table of a vegetable over all weeks and futures [kg].
func eaten(t *outlook.Table, vegetable string) (sum float64) {
	for _, v := range t.Vegetables {
		if v.Name == vegetable {
			for _, y := range v.Years {
				for i := range y.Fresh {
					sum += float64(y.Fresh[i]) + float64(y.Stored[i])
				}
			}
		}
	}
	return sum
}

func lost(h *holding.Holding, what record.What, on cal.Date, value float64, unit string) {
	h.Records = append(h.Records, record.Record{ID: "r", Date: on, What: what, Planting: "p3", Value: value, Unit: unit})
}

// A share that died or failed is lost to the table, in plants as in shares; one
// that is failing with nothing told has lost nothing; taken back, all is as it was.
func TestLossesReachTheTable(t *testing.T) {
	m := outlook.NewMemory()
	whole := compute(t, setting(t, small(), 2), m)
	with := func(change func(*holding.Holding)) *outlook.Table {
		h := small()
		h.Today = cal.Of(2027, 1, 4) // records of days to come are the test's own
		change(h)
		return compute(t, setting(t, h, 2), m)
	}
	on := cal.Of(2027, 6, 10)
	half := with(func(h *holding.Holding) { lost(h, record.Failing, on, 0.5, "share") })
	all := with(func(h *holding.Holding) { lost(h, record.Died, on, 0, "") })
	none := with(func(h *holding.Holding) { lost(h, record.Failing, on, 0, "") })
	nought := with(func(h *holding.Holding) { lost(h, record.Died, on, 0, "share") })
	plants := 0.0
	for _, c := range setting(t, small(), 2).Book.Crops() {
		if u, err := c.Use(""); err == nil && c.ID == "beetroot" {
			plants = 2 * u.PlantsPerM2()
		}
	}
	counted := with(func(h *holding.Holding) { lost(h, record.Died, on, plants/2, "plants") })
	if a, b, c := eaten(whole, "beetroot"), eaten(half, "beetroot"), eaten(all, "beetroot"); !(a > b && b > c && c == 0) {
		t.Errorf("whole %g, half %g, none %g kg come to the table", a, b, c)
	}
	if a, b := eaten(half, "beetroot"), eaten(counted, "beetroot"); math.Abs(a-b) > 1e-9*a {
		t.Errorf("half of it in shares gives %g, in plants %g", a, b)
	}
	for name, same := range map[string]*outlook.Table{"failing with nothing told": none, "a share of nothing": nought, "taken back": with(func(*holding.Holding) {})} {
		if !reflect.DeepEqual(same.Vegetables, whole.Vegetables) || !reflect.DeepEqual(same.Plantings, whole.Plantings) {
			t.Errorf("%s: it is another table", name)
		}
	}
	for i, v := range half.Vegetables {
		if v.Name != "beetroot" && !reflect.DeepEqual(v.Years, whole.Vegetables[i].Years) {
			t.Errorf("beetroot lost changes the %s", v.Name)
		}
	}
}

// Recorded as cleared twice, it is gone on the first of the days, whichever was
// written first: the lanes of package space say so too.
func TestClearedTwiceIsGoneAtFirst(t *testing.T) {
	first, second := cal.Of(2027, 6, 10), cal.Of(2027, 6, 20)
	for _, days := range [][]cal.Date{{first, second}, {second, first}} {
		h := small()
		for _, on := range days {
			lost(h, record.Cleared, on, 0, "")
		}
		f := fateIn(t, compute(t, setting(t, h, 2), outlook.NewMemory()), "p3")
		if free := f.First + cal.Date(f.Years[0].Gone) + 1; free != first {
			t.Errorf("told in the order %v its ground is free on %s", days, free)
		}
	}
}

// What died goes into no store, and what was cleared does.
func TestWhatDiedIsNotStored(t *testing.T) {
	stored := func(what record.What) float64 {
		h := small()
		h.Records = append(h.Records, record.Record{ID: "r", Date: cal.Of(2027, 10, 1), What: what, Planting: "p2"})
		h.Plantings = h.Plantings[1:2]
		h.Batches = nil
		table := compute(t, setting(t, h, 2), outlook.NewMemory())
		sum := 0.0
		for _, s := range table.Sources("carrot") {
			for _, kg := range s.Stored {
				sum += kg
			}
		}
		return sum
	}
	if died, cleared := stored(record.Died), stored(record.Cleared); died != 0 || cleared == 0 {
		t.Errorf("of what died %g kg are eaten from store, of what was cleared %g", died, cleared)
	}
}
