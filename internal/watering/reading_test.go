package watering_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/record"
	"garner/internal/water"
	"garner/internal/watering"
)

// A reading moves the bed it is of and no other; a dry one has it watered sooner, a wet
// one later; the surer the further. What was read before a fill is forgotten with it.
func TestAReadingMovesItsBed(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	read := func(felt, sure string, day cal.Date) func(*holding.Holding) {
		return func(h *holding.Holding) {
			h.Readings = []record.Reading{{ID: "m", Date: day, Bed: "h3", Way: record.Finger, Felt: felt, Sure: sure}}
		}
	}
	bare := func(h *holding.Holding) { h.Readings = nil }
	none, _ := under(t, 1, today, nil, bare)
	dried, _ := under(t, 1, today, nil, read("dry", "", today))
	sure, _ := under(t, 1, today, nil, read("dry", "well", today))
	wet, _ := under(t, 1, today, nil, read("wet", "", today))
	if !(sure["h3"].MissingL > dried["h3"].MissingL && dried["h3"].MissingL > none["h3"].MissingL && none["h3"].MissingL > wet["h3"].MissingL) {
		t.Errorf("lacks %.0f L, felt dry %.0f, surely dry %.0f, wet %.0f", none["h3"].MissingL, dried["h3"].MissingL, sure["h3"].MissingL, wet["h3"].MissingL)
	}
	if dried["h3"].Read != today || none["h3"].Read.IsSet() || dried["h3"].ReadL >= 0 || math.Abs(none["h3"].MissingL-dried["h3"].MissingL-dried["h3"].ReadL) > 1 {
		t.Errorf("read on %v: %.1f L less is missing, %.1f with it and %.1f without", dried["h3"].Read, dried["h3"].ReadL, dried["h3"].MissingL, none["h3"].MissingL)
	}
	if none["h4"] != dried["h4"] {
		t.Errorf("another bed: %+v, %+v", none["h4"], dried["h4"])
	}
	if !(sure["h3"].NowL > 0) || wet["h3"].NowL > none["h3"].NowL {
		t.Errorf("today %.0f L, felt dry %.0f, wet %.0f", none["h3"].NowL, sure["h3"].NowL, wet["h3"].NowL)
	}
}

// Under one future, since plants differ in each: a probe that tells just what the balance holds changes no figure of the bed.
func TestTheBalancesOwnReadingChangesNothing(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	bare, _ := under(t, 1, today, nil, func(h *holding.Holding) { h.Readings = nil })
	soil, err := water.SoilOf(textureOf(t, alone))
	if err != nil {
		t.Fatal(err)
	}
	read := func(pct float64) watering.Bed {
		beds, _ := under(t, 1, today, nil, func(h *holding.Holding) {
			h.Readings = []record.Reading{{ID: "m", Date: today, Bed: alone, Way: record.Probe, Value: pct}}
		})
		return beds[alone]
	}
	// what is moved goes in a straight line with the per cent, between wilting and capacity
	low, high := 100*soil.Wilting+1, 100*soil.Capacity-1
	a, b := read(low).ReadL, read(high).ReadL
	same := read(low - a*(high-low)/(b-a))
	if math.Abs(same.ReadL) > 1e-6 || !same.Read.IsSet() {
		t.Fatalf("%+v", same)
	}
	was := bare[alone]
	if math.Abs(same.MissingL-was.MissingL) > 1e-6 || math.Abs(same.NowL-was.NowL) > 1e-6 || math.Abs(same.WeekL-was.WeekL) > 1e-6 || same.Wants != was.Wants || same.WantsDry != was.WantsDry {
		t.Errorf("%+v, without a reading %+v", same, was)
	}
}

func textureOf(t *testing.T, bed string) string {
	for _, b := range demotest.Holding(t, "main").Beds {
		if b.ID == bed {
			return b.Texture
		}
	}
	t.Fatalf("no bed %s", bed)
	return ""
}

// alone is a bed of the demo on which one planting stands in July.
const alone = "h3"
