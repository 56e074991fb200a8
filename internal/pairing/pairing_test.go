package pairing_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/pairing"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/sun"
)

// months are means 1980-2019 of KNMI station 260, De Bilt (KNMI open data, CC BY
// 4.0): tmin, tmax, rain, radiation.
var months = climate.Normals{}

func init() {
	for i, m := range [12][4]float64{
		{0.45, 5.73, 72.2, 2.50}, {0.27, 6.59, 56.1, 4.68}, {2.21, 10.16, 63.1, 8.48}, {4.20, 14.22, 42.6, 13.72},
		{7.84, 18.13, 59.5, 17.44}, {10.63, 20.54, 68.2, 18.21}, {12.86, 22.83, 84.6, 17.55}, {12.33, 22.58, 74.8, 15.03},
		{9.96, 19.25, 75.8, 10.56}, {7.04, 14.80, 82.1, 6.29}, {3.69, 9.70, 78.1, 2.97}, {1.50, 6.61, 80.2, 1.93}} {
		months[i] = climate.MonthNormal{TMinC: m[0], TMaxC: m[1], RainMM: m[2], RadiationMJ: climate.Is(m[3])}
	}
}

func planting(id, name, use string, method plan.Method, date cal.Date, area float64) plan.Planting {
	p := plan.New(id, "p")
	p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2 = "b", name, use, method, date, area
	return p
}

// pairs are what growers put on the same ground.
func pairs() map[string][2]plan.Planting {
	corn := planting("upper", "sweetcorn", "table", plan.Plant, cal.Of(2027, 5, 25), 6)
	squash := planting("lower", "winter-squash", "table", plan.Plant, cal.Of(2027, 6, 1), 6)
	sprouts := planting("upper", "brussels-sprout", "winter", plan.Plant, cal.Of(2027, 5, 25), 6)
	sprouts.ClearBy = cal.Of(2028, 3, 20)
	lettuce := planting("lower", "lettuce", "heart", plan.Plant, cal.Of(2027, 5, 28), 3)
	salad := planting("lower", "lambs-lettuce", "leaf", plan.Seed, cal.Of(2027, 8, 15), 6)
	salad.ClearBy = cal.Of(2028, 3, 20)
	squash.Relation, lettuce.Relation, salad.Relation = plan.Under, plan.Between, plan.Under
	return map[string][2]plan.Planting{"corn and squash": {corn, squash}, "sprouts and lettuce": {sprouts, lettuce}, "sprouts and lamb's lettuce": {sprouts, salad}}
}

func table(t *testing.T, both [2]plan.Planting) *outlook.Table {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	both[1].To = both[0].ID
	h := &holding.Holding{ID: "h", Name: "Pair", Zone: "Europe/Amsterdam", Today: cal.Of(2027, 4, 5), Eaters: 2, Plan: "p",
		Sites:     []place.Site{{ID: "s", Name: "Home", Location: sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.2, ElevationM: 2}, Weather: "w"}},
		Beds:      []place.Bed{{ID: "b", Site: "s", Kind: "bed", LengthM: 6, WidthM: 1.2, Light: 1, Soil: "good"}},
		Plans:     []plan.Plan{{ID: "p", Name: "The year"}},
		Plantings: both[:],
		Weather:   []holding.WeatherSource{{ID: "w", Name: "Normals", Normals: &months}},
	}
	made, err := outlook.Compute(outlook.Setting{Holding: h, Book: book, Today: h.Today, From: h.Today.Monday(), Weeks: 56, Years: 40, Seed: 1, Workers: 2}, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	return made
}

func ask(t *testing.T, both [2]plan.Planting, strip, clear cal.Date) *pairing.Answer {
	t.Helper()
	a, err := pairing.Ask(pairing.Question{Table: table(t, both), Upper: &both[0], Lower: &both[1], Futures: 40, StripOn: strip, StripShare: 0.5, ClearOn: clear})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// A second crop never gives either more than it would have alone, light is a
// share, and together they give more than the ground of one.
func TestAPairSharesItsLight(t *testing.T) {
	for name, both := range pairs() {
		a := ask(t, both, cal.None, cal.None)
		t.Logf("%s: upper %.2f, lower %.2f, ratio %.2f", name, a.Upper.Share, a.Lower.Share, a.Ratio)
		// A trifle of room: yield is read half-way through standing, and a later
		// crop stands into better weather.
		if a.Upper.Share > 1.02 || a.Lower.Share > 1.02 {
			t.Errorf("%s: shares of alone are %.3f and %.3f", name, a.Upper.Share, a.Lower.Share)
		}
		held := (a.Upper.Share*both[0].AreaM2 + a.Lower.Share*both[1].AreaM2) / max(both[0].AreaM2, both[1].AreaM2)
		if math.Abs(a.Ratio-held) > 1e-9 {
			t.Errorf("%s: a ratio of %.2f, want %.2f", name, a.Ratio, held)
		}
		lit := 0
		for _, w := range a.Weeks {
			if w.Upper < 0 || w.Upper > 1 || w.Lower < 0 || w.Lower > 1 {
				t.Errorf("%s: cover in the week of %s is %g and %g", name, w.Monday, w.Upper, w.Lower)
			}
			if !w.Lit {
				continue
			}
			lit++
			if w.Poor < 0 || w.Poor > w.Light || w.Light > w.Good || w.Good > 1 {
				t.Errorf("%s: light in the week of %s is %g, %g, %g", name, w.Monday, w.Poor, w.Light, w.Good)
			}
		}
		if lit < 4 {
			t.Errorf("%s: the lower crop has light in %d weeks", name, lit)
		}
		if a.Stripped != nil || a.Cleared != nil {
			t.Errorf("%s: offers that nobody asked for", name)
		}
	}
}

// Stripping or clearing the upper crop never takes from the lower, and costs the
// upper; the earlier it is cleared, the more of both.
func TestOffers(t *testing.T) {
	both := pairs()["sprouts and lamb's lettuce"]
	early := ask(t, both, cal.Of(2027, 9, 10), cal.Of(2027, 9, 10))
	late := ask(t, both, cal.Of(2027, 11, 15), cal.Of(2027, 11, 15))
	for name, pair := range map[string][2]*pairing.Offer{"stripped": {early.Stripped, late.Stripped}, "cleared": {early.Cleared, late.Cleared}} {
		t.Logf("%s early %+v, late %+v", name, *pair[0], *pair[1])
		for _, o := range pair {
			if o.LowerKg < -1e-9 || o.UpperKg > 1e-9 {
				t.Errorf("%s on %s: lower %+.3f kg, upper %+.3f kg", name, o.On, o.LowerKg, o.UpperKg)
			}
		}
		if pair[0].LowerKg <= pair[1].LowerKg || pair[0].UpperKg > pair[1].UpperKg {
			t.Errorf("%s: early %+.3f and %+.3f kg, late %+.3f and %+.3f kg", name, pair[0].LowerKg, pair[0].UpperKg, pair[1].LowerKg, pair[1].UpperKg)
		}
	}
	if early.Cleared.LowerKg <= early.Stripped.LowerKg {
		t.Errorf("clearing gives %.3f kg, stripping %.3f kg", early.Cleared.LowerKg, early.Stripped.LowerKg)
	}
}

// What is planned for the upper's leaves does not change what stripping gives.
func TestPlannedStripping(t *testing.T) {
	both := pairs()["sprouts and lamb's lettuce"]
	on := cal.Of(2027, 9, 10)
	free := ask(t, both, on, cal.None)
	both[0].StripOn, both[0].StripShare = on, 0.5
	planned := ask(t, both, on, cal.None)
	if *free.Stripped != *planned.Stripped {
		t.Errorf("stripping gives %+v, and once planned %+v", *free.Stripped, *planned.Stripped)
	}
	if planned.Lower.Kg <= free.Lower.Kg {
		t.Errorf("once planned the lower gives %.3f kg, before %.3f kg", planned.Lower.Kg, free.Lower.Kg)
	}
}

func TestUsualDays(t *testing.T) {
	from, until := cal.Of(2027, 8, 15), cal.Of(2028, 3, 20)
	for _, c := range []struct {
		today    cal.Date
		northern bool
		want     cal.Date
		ok       bool
	}{
		{cal.Of(2027, 4, 1), true, cal.Of(2027, 10, 5), true},
		{cal.Of(2027, 11, 1), true, cal.Of(2027, 11, 1), true}, // early October is past
		{cal.Of(2028, 3, 15), true, cal.Of(2028, 3, 15), false},
		{cal.Of(2027, 4, 1), false, cal.Of(2027, 8, 29), true},
	} {
		if got, ok := pairing.UsualStrip(from, until, c.today, c.northern); ok != c.ok || ok && got != c.want {
			t.Errorf("today %s: strip on %s %v, want %s %v", c.today, got, ok, c.want, c.ok)
		}
	}
	if d, ok := pairing.UsualClear(from, until, cal.Of(2027, 4, 1)); !ok || d <= from || d >= until {
		t.Errorf("cleared on %s %v", d, ok)
	}
}

// A bed that nothing stands on in the time of the table is told.
func TestNoBed(t *testing.T) {
	both := pairs()["corn and squash"]
	made := table(t, both)
	both[0].Bed, both[1].Bed = "x", "x"
	if _, err := pairing.Ask(pairing.Question{Table: made, Upper: &both[0], Lower: &both[1], Futures: 5, StripOn: cal.None, ClearOn: cal.None}); err == nil {
		t.Error("no fault for a bed that is not in the table")
	}
}

func BenchmarkPair(b *testing.B) {
	both := pairs()["sprouts and lamb's lettuce"]
	t := &testing.T{}
	made := table(t, both)
	b.ResetTimer()
	for range b.N {
		_, err := pairing.Ask(pairing.Question{Table: made, Upper: &both[0], Lower: &both[1], Futures: 40, StripOn: cal.Of(2027, 10, 5), StripShare: 0.4, ClearOn: cal.Of(2027, 11, 1)})
		if err != nil {
			b.Fatal(err)
		}
	}
}
