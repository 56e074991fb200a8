package outlook_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
)

// storedOf adds up what a table eats from store of a vegetable [kg].
func storedOf(t *outlook.Table, vegetable string) float64 {
	sum := 0.0
	for _, s := range t.Sources(vegetable) {
		for _, kg := range s.Stored {
			sum += kg
		}
	}
	return sum
}

// A count of the store says how much is eaten from it; the count of what was told
// anyway changes nothing, and one in pieces neither.
func TestACountCorrectsTheTable(t *testing.T) {
	count := func(kg float64, unit, batch string) *outlook.Table {
		h := small()
		h.Records = []record.Record{{ID: "r", Date: cal.Of(2027, 1, 3), What: record.Counted, Store: "sand", Batch: batch, Value: kg, Unit: unit}}
		return compute(t, setting(t, h, 2), outlook.NewMemory())
	}
	told := compute(t, setting(t, small(), 2), outlook.NewMemory())
	for name, same := range map[string]*outlook.Table{"kg": count(9, "kg", ""), "pieces": count(30, "pieces", "")} {
		if !reflect.DeepEqual(told.Vegetables, same.Vegetables) {
			t.Errorf("a count of what was told, in %s, changes the table", name)
		}
	}
	half, none := count(4.5, "kg", ""), count(0, "kg", "a1")
	if a, b := storedOf(told, "carrot"), storedOf(half, "carrot"); a-b < 1 {
		t.Errorf("%g kg eaten from 9, %g from half of it", a, b)
	}
	if a, b := storedOf(half, "carrot"), storedOf(none, "carrot"); a-b < 1 {
		t.Errorf("%g kg eaten from 4.5, %g from none", a, b)
	}
}

// What is picked over before the table begins goes to no store in the model: it
// lies there as a batch, or was eaten. What is picked from then on does.
func TestWhatIsPickedBeforeTheTableIsInNoStore(t *testing.T) {
	picked := func(batches ...larder.Batch) []float32 {
		h := small()
		h.Today = cal.Of(2027, 9, 16) // a Thursday
		h.Batches, h.Wants = batches, h.Wants[:1]
		h.Stores = append(h.Stores, larder.Store{ID: "box", Name: "Box", Method: "frozen", CapacityKg: 90})
		h.Plantings = append(h.Plantings[:1], plan.Planting{ID: "c", Plan: "p", Bed: "b1", Crop: "courgette", Method: plan.Plant,
			Date: cal.Of(2027, 5, 25), AreaM2: 2, ClearBy: cal.Of(2027, 10, 15), StripOn: cal.None, Store: "box"})
		for _, s := range compute(t, setting(t, h, 2), outlook.NewMemory()).Stores {
			if s.Store == "box" {
				return s.LevelKg[0]
			}
		}
		t.Fatal("the box is not used")
		return nil
	}
	level := picked()
	if level[0] > 1 || level[20] <= level[0] {
		t.Errorf("%g kg in the box on the first day and %g three weeks on", level[0], level[20])
	}
	batch := picked(larder.Batch{ID: "n", Store: "box", Crop: "courgette", Kg: 0.5, Stored: cal.Of(2027, 9, 15), Planting: "c"})
	if batch[1] != 0 || math.Abs(float64(batch[2])-0.5) > 1e-6 {
		t.Errorf("%g kg on Tuesday, %g on Wednesday, when half a kilogram was laid in", batch[1], batch[2])
	}
}

// What was lifted this week and laid into a store as a batch is there once.
func TestWhatWasStoredThisWeekIsThereOnce(t *testing.T) {
	lifted := func(batch bool) *outlook.Table {
		h := small()
		h.Today = cal.Of(2027, 9, 16) // a Thursday
		h.Batches = nil
		h.Records = []record.Record{{ID: "r", Date: cal.Of(2027, 9, 15), What: record.Cleared, Planting: "p2"}}
		if batch {
			h.Batches = []larder.Batch{{ID: "n", Store: "sand", Crop: "carrot", Use: "storage", Kg: 2, Stored: cal.Of(2027, 9, 15), Planting: "p2"}}
		}
		return compute(t, setting(t, h, 2), outlook.NewMemory())
	}
	without, with := storedOf(lifted(false), "carrot"), storedOf(lifted(true), "carrot")
	if without < 2.5 {
		t.Fatalf("only %g kg are eaten from store: the check shows nothing", without)
	}
	if with > 2 {
		t.Errorf("%g kg are eaten from store, of a batch of 2 kg", with)
	}
	over := 0.0
	for _, v := range lifted(true).Vegetables {
		if v.Name == "carrot" {
			for _, y := range v.Years {
				for _, kg := range y.Over[:7] {
					over += float64(kg) / float64(len(v.Years))
				}
			}
		}
	}
	if over > 1 {
		t.Errorf("%g kg of what lies in store are told as over", over)
	}
}
