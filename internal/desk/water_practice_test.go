package desk

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/plan"
	"garner/internal/record"
)

// wateringNow is what the program answers of one bed.
func wateringNow(t *testing.T, h *holding.Holding, bed string) BedThirst {
	t.Helper()
	h.Observe()
	r, err := Watering(h, WateringOptions{Leave: cal.None, Back: cal.None, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range r.Beds {
		if b.Bed == bed {
			return b
		}
	}
	t.Fatalf("nothing is told of %s", bed)
	return BedThirst{}
}

// Common practice, no source: a full canopy of peppers or tomatoes under film at 51-53 N
// uses 15 to 22 L/m2 in a week of July; none of it comes as rain. That cans need cover only a
// third to half of it where roots reach rained-on soil is not reckoned: the litres told
// are the most that such a bed asks for.
func TestTheProgramOnAFullCanopyInJuly(t *testing.T) {
	b := wateringNow(t, inJuly(t), "t1")
	if per := b.UsesL / b.AreaM2; per < 15 || per > 22 {
		t.Errorf("%.1f L/m2 in the week", per)
	}
	if b.DryL > 4*b.UsesL {
		t.Errorf("%v L in a dry week, of %v that it uses", b.DryL, b.UsesL)
	}
}

// Common practice, no source: newly planted over-wintering crops still need water in a dry
// September.
func TestTheProgramOnADrySeptember(t *testing.T) {
	h := sampleHolding(t)
	h.Today = cal.Of(2027, 9, 6)
	h.Plantings = append(h.Plantings, plan.Planting{ID: "new", Plan: h.Plan, Bed: "h9", Crop: "leaf-beet", Use: "overwintered", Method: plan.Plant, Date: h.Today - 2, ClearBy: cal.None, StripOn: cal.None, AreaM2: 2})
	for i := range 15 {
		for _, site := range h.Sites {
			h.Foretold = append(h.Foretold, observed.Foretold{Site: site.ID, Date: h.Today + cal.Date(i), Told: h.Today, TMinC: climate.Is(10), TMaxC: climate.Is(20), RainMM: climate.Is(0)})
		}
	}
	if b := wateringNow(t, h, "h9"); b.WeekL <= 0 || b.Wants == nil || *b.Wants > h.Today+12 {
		t.Errorf("%+v", b)
	}
}

// Rain that is typed reaches the balance: a gauge that held 25 mm this morning leaves less
// missing than one that was dry, is told as the last rain, and does nothing under film.
func TestRainOfTheGaugeReachesTheBalance(t *testing.T) {
	gauge := func(bed string, mm float64) BedThirst {
		h := inJuly(t)
		h.WeatherReadings = append(h.WeatherReadings, observed.Reading{ID: "g", Site: "home", Date: h.Today, At: observed.Morning, Since: h.Today - 2, By: observed.ByHand, RainMM: climate.Is(mm)},
			observed.Reading{ID: "g2", Site: "share", Date: h.Today, At: observed.Morning, Since: h.Today - 2, By: observed.ByHand, RainMM: climate.Is(mm)})
		return wateringNow(t, h, bed)
	}
	dry, wet := gauge("h6", 0), gauge("h6", 25)
	if !(wet.MissingL < 0.7*dry.MissingL) {
		t.Errorf("%v L missing after 25 mm, %v after none", wet.MissingL, dry.MissingL)
	}
	if wet.Why.RainOn == nil || wet.Why.RainMM < 5 || wet.Why.KnownTo == nil {
		t.Errorf("the rain is not told: %+v", wet.Why)
	}
	if a, b := gauge("t1", 0), gauge("t1", 25); a.MissingL != b.MissingL {
		t.Errorf("under film %v L missing after rain, %v without", b.MissingL, a.MissingL)
	}
}

// A probe's reading moves the balance of its bed toward what it read.
func TestAProbeMovesTheBalance(t *testing.T) {
	read := func(value float64) BedThirst {
		h := inJuly(t)
		if value > 0 {
			h.Readings = append(h.Readings, record.Reading{ID: "p", Date: h.Today, Bed: "h6", Way: record.Probe, Value: value, Sure: "well"})
		}
		return wateringNow(t, h, "h6")
	}
	untold, dry, wet := read(0), read(12), read(30)
	if !(dry.MissingL > untold.MissingL && wet.MissingL < untold.MissingL) || dry.ReadOn == nil {
		t.Errorf("missing %v L by itself, %v when read dry, %v when read wet", untold.MissingL, dry.MissingL, wet.MissingL)
	}
}
