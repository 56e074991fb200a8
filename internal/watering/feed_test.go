package watering_test

import (
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/record"
	"garner/internal/watering"
)

func feeds(t *testing.T, today cal.Date, change func(*holding.Holding)) map[string]watering.Feeding {
	t.Helper()
	h := demotest.Holding(t, "main")
	h.Today = today
	if change != nil {
		change(h)
	}
	s := demotest.Setting(t, h, 20)
	s.Today, s.From = today, today.Monday()
	list, err := watering.Feeds(s, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]watering.Feeding{}
	for _, f := range list {
		out[f.Planting] = f
	}
	return out
}

// Common practice, no source: tomatoes are fed from the first fruit on and not before,
// carrots in the ground never; what was fed is due again after its days.
func TestFruitIsFed(t *testing.T) {
	early, summer := feeds(t, cal.Of(2027, 5, 20), nil), feeds(t, cal.Of(2027, 8, 2), nil)
	fed := 0
	for id, f := range summer {
		switch {
		case f.Crop == "tomato":
			fed++
			if _, young := early[id]; young {
				t.Errorf("%s is fed in May", id)
			}
			again := feeds(t, cal.Of(2027, 8, 2), func(h *holding.Holding) {
				h.Records = append(h.Records, record.Record{ID: "fed", Date: cal.Of(2027, 7, 30), What: record.Fed, Planting: id, Value: 10, Unit: "L"})
			})[id]
			if f.Due != cal.Of(2027, 8, 2) || again.Due != cal.Of(2027, 7, 30)+cal.Date(f.EveryD) || again.Last != cal.Of(2027, 7, 30) {
				t.Errorf("due on %v, and once fed on %v", f.Due, again.Due)
			}
		case f.Crop == "carrot" && !f.Pot:
			t.Errorf("%+v", f)
		}
		if f.LitresL <= 0 || f.Strength <= 0 || f.Strength > 1 {
			t.Errorf("%+v", f)
		}
	}
	if fed == 0 {
		t.Error("no tomato is fed in August")
	}
}

// A feed is water, too: the balance counts its litres.
func TestAFeedIsWater(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	give := func(what record.What) func(*holding.Holding) {
		return func(h *holding.Holding) {
			h.Records = append(h.Records, record.Record{ID: "w", Date: today - 1, What: what, Bed: "t1", Value: 60, Unit: "L"})
		}
	}
	watered, _ := on(t, today, nil, give(record.Watered))
	fed, _ := on(t, today, nil, give(record.Fed))
	if !reflect.DeepEqual(watered["t1"], fed["t1"]) {
		t.Errorf("watered %+v, fed %+v", watered["t1"], fed["t1"])
	}
}

// A dry feed lasts longer than a liquid one, and brings no water.
func TestADryFeedLastsAndIsNoWater(t *testing.T) {
	today := cal.Of(2027, 8, 2)
	seen := false
	for id, f := range feeds(t, today, nil) {
		if f.Crop != "tomato" {
			continue
		}
		seen = true
		dry := feeds(t, today, func(h *holding.Holding) {
			h.Records = append(h.Records, record.Record{ID: "dry", Date: today - 3, What: record.Fed, Planting: id, Value: 0.3, Unit: "kg"})
		})[id]
		if f.DryEveryD <= f.EveryD || dry.Due != today-3+cal.Date(f.DryEveryD) || !dry.LastDry {
			t.Errorf("%+v, once fed dry %+v", f, dry)
		}
	}
	if !seen {
		t.Error("no tomato is fed in August")
	}
	give := func(h *holding.Holding) {
		h.Records = append(h.Records, record.Record{ID: "w", Date: today - 1, What: record.Fed, Bed: "t1", Value: 60, Unit: "kg"})
	}
	without, _ := on(t, today, nil, nil)
	with, _ := on(t, today, nil, give)
	if !reflect.DeepEqual(with["t1"], without["t1"]) {
		t.Errorf("without %+v, with dry feed %+v", without["t1"], with["t1"])
	}
}
