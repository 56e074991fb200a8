package desk

import (
	"math"
	"testing"
)

// Litres are millimetres on the bed's ground, a week a week's share of its month;
// the wall border is spared most of the demo's beds outdoors; the pages tell what
// the prompt does.
func TestWaterOfTheDemo(t *testing.T) {
	h := sampleHolding(t)
	told, err := Shade(h)
	if err != nil || len(told.Wrong) != 0 {
		t.Fatalf("%v, %v", told, err)
	}
	o := NewOffice(newShelf(h))
	most, spared := "", 0.0
	for i, b := range h.Beds {
		w := told.Beds[i].Water
		if w == nil || told.Beds[i].Bed != b.ID {
			t.Fatalf("%s: no water", b.ID)
		}
		if litres := w.MM[6] * b.AreaM2() * 7 / 31; math.Abs(litres-w.WeekL[6]) > 0.1+0.05*b.AreaM2() {
			t.Errorf("%s: %v litres a week in July, from its millimetres %v", b.ID, w.WeekL[6], litres)
		}
		if w.Peak() < 5 || w.Peak() > 8 || w.YearMM > w.YearOpen+1 {
			t.Errorf("%s: most is asked in month %d; %v mm in the year, in full light %v", b.ID, w.Peak(), w.YearMM, w.YearOpen)
		}
		if w.YearSpared() > spared {
			most, spared = b.ID, w.YearSpared()
		}
		page, err := o.BedWater(b.ID)
		if err != nil || *page != *w {
			t.Errorf("%s: %v on its page, %v at the prompt (%v)", b.ID, page, w, err)
		}
	}
	if most != "hb" || spared < 0.15 {
		t.Errorf("%s is spared most: %.2f", most, spared)
	}
}

// Without a weather the light is told and the reason why no water is; removing the
// wall is the border's full light.
func TestWaterLeftUntold(t *testing.T) {
	h := sampleHolding(t)
	h.Sites[0].Weather = ""
	told, err := Shade(h)
	if err != nil || len(told.Wrong) != 1 || told.Beds[0].Water != nil || told.Beds[0].Light[6] == 0 {
		t.Errorf("%v, %v", told, err)
	}
	if w, err := NewOffice(newShelf(h)).BedWater("hb"); w != nil || err != nil {
		t.Errorf("%v, %v", w, err)
	}
	h = sampleHolding(t)
	h.Features = nil
	for i := range h.Beds {
		h.Beds[i].Light = 1
	}
	if told, err = Shade(h); err != nil {
		t.Fatal(err)
	}
	for _, b := range told.Beds {
		if b.Water.MM != b.Water.OpenMM || b.Water.YearSpared() != 0 {
			t.Errorf("%s: %v with nothing round it, %v in full light", b.Bed, b.Water.MM, b.Water.OpenMM)
		}
	}
}

func BenchmarkWaterOfTheDemo(b *testing.B) {
	h := sampleHolding(b)
	for range b.N {
		if _, err := Shade(h); err != nil {
			b.Fatal(err)
		}
	}
}
