package watering_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/watering"
)

// on asks what the beds of the demo want on a day, after change.
func on(t *testing.T, today cal.Date, away *watering.Away, change func(*holding.Holding)) (map[string]watering.Bed, watering.Bed) {
	t.Helper()
	return under(t, 20, today, away, change)
}

// under asks the same under so many futures.
func under(t *testing.T, futures int, today cal.Date, away *watering.Away, change func(*holding.Holding)) (map[string]watering.Bed, watering.Bed) {
	t.Helper()
	h := demotest.Holding(t, "main")
	h.Today = today
	if change != nil {
		change(h)
	}
	s := demotest.Setting(t, h, futures)
	s.Today, s.From = today, today.Monday()
	beds, allDryL, err := watering.Of(s, outlook.NewMemory(), away)
	if err != nil {
		t.Fatal(err)
	}
	out, all := map[string]watering.Bed{}, watering.Bed{WeekDryL: allDryL}
	for _, b := range beds {
		out[b.Bed] = b
		all.NowL, all.WeekL, all.BeforeL, all.HelperL = all.NowL+b.NowL, all.WeekL+b.WeekL, all.BeforeL+b.BeforeL, all.HelperL+b.HelperL
	}
	return out, all
}

// dry puts so many days without rain before the futures of every site.
func dry(h *holding.Holding, from cal.Date, days int) {
	r := &climate.Record{ID: "dry"}
	for i := range days {
		r.Days = append(r.Days, climate.Observation{Date: from + cal.Date(i), TMinC: climate.Is(10), TMaxC: climate.Is(20), RainMM: climate.Is(0)})
	}
	for i := range h.Weather {
		h.Weather[i].Forecast = r
	}
}

// Common practice, no source: a full canopy of tomatoes and peppers under film at
// 51-53 N uses 15 to 22 L/m2 in a week of July.
func TestFullCanopyUnderFilmInJuly(t *testing.T) {
	for _, day := range []int{5, 12, 19} {
		beds, _ := on(t, cal.Of(2027, 7, day), nil, nil)
		if got := beds["t1"].UsesL / beds["t1"].AreaM2; got < 15 || got > 22 {
			t.Errorf("%d July: %.1f L/m2 in the week", day, got)
		}
	}
}

// Common practice, no source: newly planted over-wintering crops need water in a dry
// September.
func TestNewlyPlantedWantWaterInADrySeptember(t *testing.T) {
	today := cal.Of(2027, 9, 6)
	beds, _ := on(t, today, nil, func(h *holding.Holding) {
		dry(h, today, 15)
		for i := range h.Plantings {
			if h.Plantings[i].ID == "lft-27" {
				h.Plantings[i].Bed, h.Plantings[i].Date = "h9", today-2
				return
			}
		}
		h.Plantings = append(h.Plantings, plan.Planting{ID: "new", Plan: h.Plan, Bed: "h9", Crop: "leaf-beet", Use: "overwintered", Method: plan.Plant, Date: today - 2, AreaM2: 2})
	})
	b := beds["h9"]
	if !(b.WeekL > 0) || !b.Wants.IsSet() || b.Wants > today+12 {
		t.Errorf("%.0f L in the week, in want on %v", b.WeekL, b.Wants)
	}
}

// What was watered counts from the first record on: a bed watered yesterday lacks
// less than one watered a month ago and not since.
func TestRecordsOfWateringCount(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	record := func(d cal.Date) func(*holding.Holding) {
		return func(h *holding.Holding) {
			h.Records = append(h.Records, record.Record{ID: "w", Date: d, What: record.Watered, Bed: "t1", Value: 400, Unit: "L"})
		}
	}
	fresh, _ := on(t, today, nil, record(today-1))
	old, _ := on(t, today, nil, record(today-30))
	none, _ := on(t, today, nil, nil)
	if !fresh["t1"].Told || none["t1"].Told {
		t.Errorf("told %v and %v", fresh["t1"].Told, none["t1"].Told)
	}
	if !(fresh["t1"].MissingL < 50) || !(old["t1"].MissingL > none["t1"].MissingL) || !(old["t1"].NowL > 100) {
		t.Errorf("lacks %.0f L watered yesterday, %.0f a month ago (%.0f due), %.0f without a record", fresh["t1"].MissingL, old["t1"].MissingL, old["t1"].NowL, none["t1"].MissingL)
	}
	if fresh["t1"].Wants <= today || old["t1"].Wants != today {
		t.Errorf("in want on %v and %v", fresh["t1"].Wants, old["t1"].Wants)
	}
	if !reflect.DeepEqual(fresh["h3"], none["h3"]) {
		t.Errorf("another bed: %+v, %+v", fresh["h3"], none["h3"])
	}
}

// What is given to a bed goes to what is planted there: as many litres told of the bed
// are worth as much as told of its only planting.
func TestLitresGoToWhatIsPlanted(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	told := func(change func(*record.Record)) watering.Bed {
		beds, _ := on(t, today, nil, func(h *holding.Holding) {
			h.Plantings = append(h.Plantings[:0:0], h.Plantings...)
			kept := h.Plantings[:0]
			for _, p := range h.Plantings {
				if p.Bed != "t1" || p.ID == "tom-27a" {
					kept = append(kept, p)
				}
			}
			h.Plantings = kept
			r := record.Record{ID: "w", Date: today - 10, What: record.Watered, Value: 60, Unit: "L"}
			change(&r)
			h.Records = append(h.Records, r)
		})
		return beds["t1"]
	}
	bed := told(func(r *record.Record) { r.Bed = "t1" })
	planting := told(func(r *record.Record) { r.Planting = "tom-27a" })
	if math.Abs(bed.MissingL-planting.MissingL) > 0.01*planting.MissingL+0.5 || planting.AreaM2 >= 9 {
		t.Errorf("lacks %.1f L by the bed's record, %.1f by the planting's", bed.MissingL, planting.MissingL)
	}
}

// Filled on the day of leaving, a bed lasts at least as long as when nobody comes from
// then on unfilled; what a helper brings in a longer time away is never less.
func TestAway(t *testing.T) {
	today := cal.Of(2027, 7, 5)
	week, weekAll := on(t, today, &watering.Away{Leave: today, Back: today + 7}, nil)
	month, monthAll := on(t, today, &watering.Away{Leave: today, Back: today + 28}, nil)
	later := func(a, b cal.Date) bool { return !a.IsSet() || b.IsSet() && a >= b }
	for id, b := range month {
		if b.HelperL < week[id].HelperL-1e-9 || b.BeforeL < week[id].BeforeL {
			t.Errorf("%s: a helper brings %.1f L in a month, %.1f in a week", id, b.HelperL, week[id].HelperL)
		}
		if !later(b.FailsDry, b.WantsDry) || b.Fails.IsSet() && b.Fails <= today {
			t.Errorf("%s: filled it fails on %v, unfilled on %v", id, b.Fails, b.Wants)
		}
	}
	if !(monthAll.HelperL > weekAll.HelperL && weekAll.BeforeL > 0) {
		t.Errorf("in all %.0f L before, %.0f in a week, %.0f in a month", weekAll.BeforeL, weekAll.HelperL, monthAll.HelperL)
	}
}

// In the depth of winter no bed in the open wants water, and the answer is the same
// however often it is asked for.
func TestWinter(t *testing.T) {
	beds, all := on(t, cal.Of(2027, 1, 4), nil, nil)
	for _, id := range []string{"h1", "h3", "s2"} {
		if b := beds[id]; b.NowL != 0 || b.WeekL != 0 || b.Wants.IsSet() {
			t.Errorf("%s: %+v", id, b)
		}
	}
	again, allAgain := on(t, cal.Of(2027, 1, 4), nil, nil)
	if !reflect.DeepEqual(beds, again) || !reflect.DeepEqual(all, allAgain) {
		t.Error("asked again, the answer is another")
	}
}

// Under film a bed gets no rain: with a dry fortnight ahead the open bed wants as soon,
// and in a wet one later or never.
func TestRainCounts(t *testing.T) {
	today := cal.Of(2027, 7, 5)
	dried, dryAll := on(t, today, nil, func(h *holding.Holding) { dry(h, today, 15) })
	_, wetAll := on(t, today, nil, func(h *holding.Holding) {
		dry(h, today, 15)
		for i := range h.Weather {
			for d := range h.Weather[i].Forecast.Days {
				h.Weather[i].Forecast.Days[d].RainMM = climate.Is(6)
			}
		}
	})
	if !(wetAll.WeekL < 0.4*dryAll.WeekL) || !(dryAll.WeekL > 0) {
		t.Errorf("%.0f L in a wet week, %.0f in a dry one", wetAll.WeekL, dryAll.WeekL)
	}
	if b := dried["c1"]; b.Bed != "" && b.Wants.IsSet() && b.Wants > today+21 {
		t.Errorf("a tub lasts until %v without rain", b.Wants)
	}
}

func BenchmarkOf(b *testing.B) {
	h := demotest.Holding(b, "main")
	h.Today = cal.Of(2027, 7, 5)
	s := demotest.Setting(b, h, 20)
	s.Today, s.From = h.Today, h.Today.Monday()
	m := outlook.NewMemory()
	for range b.N {
		if _, _, err := watering.Of(s, m, nil); err != nil {
			b.Fatal(err)
		}
	}
}
