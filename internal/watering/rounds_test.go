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

// Somebody who comes more often brings less at a time to a bed, no less often keeps it
// from want, and where a bed lasts the whole time alone nothing is brought.
func TestRounds(t *testing.T) {
	today := cal.Of(2027, 7, 5)
	beds, _ := on(t, today, &watering.Away{Leave: today, Back: today + 15}, func(h *holding.Holding) { dry(h, today, 16) })
	brought := 0.0
	for id, b := range beds {
		most := func(r watering.Round) (most, sum float64) {
			for _, l := range r.GiveL {
				most, sum = max(most, l), sum+l
			}
			return most, sum
		}
		if len(b.Rounds) != len(watering.EveryDays()) {
			t.Fatalf("%s: %d rounds", id, len(b.Rounds))
		}
		for k, r := range b.Rounds {
			if want := 14 / r.EveryD; len(r.GiveL) != want {
				t.Errorf("%s: %d visits in a fortnight, every %d days", id, len(r.GiveL), r.EveryD)
			}
			_, sum := most(r)
			if !b.FailsDry.IsSet() && sum > 0 && r.EveryD == 1 {
				t.Errorf("%s lasts, and is brought %.1f L", id, sum)
			}
			if k > 0 && r.Lasts && !b.Rounds[k-1].Lasts {
				t.Errorf("%s lasts when watered every %d days, and not every %d", id, r.EveryD, b.Rounds[k-1].EveryD)
			}
			if b.Fails.IsSet() && b.Fails < today+12 && sum <= 0 && r.EveryD < 7 {
				t.Errorf("%s fails on %v, and every %d days is brought nothing", id, b.Fails, r.EveryD)
			}
			brought += sum
		}
	}
	if brought == 0 {
		t.Error("nothing is brought in a dry July fortnight")
	}
}

// What is recorded of today counts today: a bed that was filled this morning wants
// nothing now. A record without an amount counts as filled; one of the year before not.
func TestWateredTodayAndWithoutAnAmount(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	told := func(d cal.Date, litres float64, unit string) watering.Bed {
		beds, _ := on(t, today, nil, func(h *holding.Holding) {
			for _, w := range []record.Record{{ID: "w", Date: today - 40, Value: 30, Unit: "L"}, {ID: "w2", Date: d, Value: litres, Unit: unit}} {
				w.What, w.Bed = record.Watered, "t1"
				h.Records = append(h.Records, w)
			}
		})
		return beds["t1"]
	}
	dry, filled, amount := told(today-39, 1, "L"), told(today, 0, ""), told(today, 600, "L")
	if !(dry.NowL > 100) || filled.NowL != 0 || filled.MissingL > 0.1 || amount.NowL != 0 {
		t.Errorf("due %.0f L not watered, %.0f filled today, %.0f given 600 L today", dry.NowL, filled.NowL, amount.NowL)
	}
	if dry.Level.Gone() < 1 || filled.Level.Gone() > 0.01 || filled.Wants <= today {
		t.Errorf("level %+v not watered, %+v filled today, in want on %v", dry.Level, filled.Level, filled.Wants)
	}
	beds, _ := on(t, today, nil, func(h *holding.Holding) {
		h.Records = append(h.Records, record.Record{ID: "w", Date: today - 330, What: record.Watered, Bed: "t1", Value: 30, Unit: "L"})
	})
	if beds["t1"].Told {
		t.Error("a record of last summer tells of this one")
	}
}

// A bed that was just sown wants water in dry weather before anything is through.
func TestSeedIsWatered(t *testing.T) {
	today := cal.Of(2027, 4, 12) // parsnips and radishes were sown on the 8th
	beds, _ := on(t, today, nil, func(h *holding.Holding) { dry(h, today, 15) })
	if b := beds["s1"]; !b.Seeds || !b.Wants.IsSet() || b.Wants > today+7 {
		t.Errorf("%+v", b)
	}
}

// The number of workers changes nothing.
func TestWorkersChangeNothing(t *testing.T) {
	h := demotest.Holding(t, "main")
	h.Today = cal.Of(2027, 6, 14)
	h.Records = append(h.Records, record.Record{ID: "w", Date: h.Today - 6, What: record.Watered, Bed: "h3", Value: 60, Unit: "L"})
	s := demotest.Setting(t, h, 20)
	s.Today, s.From = h.Today, h.Today.Monday()
	away := &watering.Away{Leave: h.Today + 3, Back: h.Today + 12}
	var first []watering.Bed
	for _, workers := range []int{1, 3} {
		s.Workers = workers
		beds, _, err := watering.Of(s, outlook.NewMemory(), away)
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = beds
		} else if !reflect.DeepEqual(first, beds) {
			t.Error("three workers find another answer than one")
		}
	}
}
