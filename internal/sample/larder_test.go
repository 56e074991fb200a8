package sample_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/larder"
)

// yearlyKg is what a want comes to in a year [kg].
func yearlyKg(w *larder.Want) float64 {
	days := 365
	if w.From != (cal.MonthDay{}) {
		days = int(cal.Of(2027, w.To.Month, w.To.Day)-cal.Of(2027, w.From.Month, w.From.Day)) + 1
		if days <= 0 {
			days += 365
		}
	}
	return w.KgPerWeek * float64(days) / 7
}

// Four eaters want 550 to 700 kg a year, gross. UK households bought 54 to 67 kg
// of vegetables a head besides potatoes and fresh fruit (Defra Family Food,
// 2016/17 and 2020/21); those who grow eat more. The bounds are judgement.
func TestTheHouseholdWantsWhatFourEat(t *testing.T) {
	h, _ := open(t, "main")
	total, kinds := 0.0, map[string]bool{}
	for i := range h.Wants {
		total += yearlyKg(&h.Wants[i])
		kinds[h.Wants[i].Vegetable] = true
	}
	if total < 550 || total > 700 {
		t.Errorf("the household wants %.0f kg a year", total)
	}
	if len(kinds) < 24 || len(kinds) > 36 {
		t.Errorf("the household wants %d vegetables", len(kinds))
	}
}

// What lies in a store at the start fits into it, and everything wanted is grown.
func TestStoresHoldTheirBatches(t *testing.T) {
	for _, name := range names {
		h, _ := open(t, name)
		in := map[string]float64{}
		for _, b := range h.Batches {
			in[b.Store] += b.Kg
		}
		for _, s := range h.Stores {
			if in[s.ID] > s.CapacityKg {
				t.Errorf("%s: %.0f kg in %s, which holds %.0f", name, in[s.ID], s.Name, s.CapacityKg)
			}
		}
	}
}

func TestWhatIsWantedIsGrown(t *testing.T) {
	book := bookOf(t)
	for _, name := range names {
		h, _ := open(t, name)
		grown := map[string]bool{}
		for _, p := range h.Plantings {
			c, _ := book.Crop(p.Crop)
			u, err := c.Use(p.Use)
			if err != nil {
				t.Fatal(err)
			}
			grown[u.Vegetable] = true
		}
		wanted := map[string]bool{}
		for _, w := range h.Wants {
			wanted[w.Vegetable] = true
			if !grown[w.Vegetable] {
				t.Errorf("%s: %s is wanted and not grown", name, w.Vegetable)
			}
		}
		for v := range grown {
			if !wanted[v] {
				t.Errorf("%s: %s is grown and not wanted", name, v)
			}
		}
	}
}
