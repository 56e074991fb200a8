package outlook_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
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

// small is a holding small enough to read: two beds, carrots, beetroot and
// onions, one store.
func small() *holding.Holding {
	planting := func(id, bed, crop, use string, method plan.Method, date cal.Date, area float64, store string) plan.Planting {
		return plan.Planting{ID: id, Plan: "p", Bed: bed, Crop: crop, Use: use, Method: method, Date: date, AreaM2: area, ClearBy: cal.None, Store: store}
	}
	return &holding.Holding{
		ID: "h", Name: "Small", Zone: "Europe/Amsterdam", Today: cal.Of(2027, 1, 4), Eaters: 2, Plan: "p",
		Sites: []place.Site{{ID: "s", Name: "Home", Location: sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.2, ElevationM: 2}, Weather: "w"}},
		Beds: []place.Bed{
			{ID: "b1", Site: "s", Kind: "bed", LengthM: 5, WidthM: 1.2, Light: 1, Soil: "good"},
			{ID: "b2", Site: "s", Kind: "bed", LengthM: 5, WidthM: 1.2, Light: 0.8, Soil: "fair"}},
		Covers: []place.CoverSpell{{ID: "c1", Bed: "b2", Spell: cover.Spell{Kind: cover.Fleece, On: cal.Of(2027, 3, 1), Off: cal.Of(2027, 5, 1)}}},
		Plans:  []plan.Plan{{ID: "p", Name: "The year"}},
		Plantings: []plan.Planting{
			planting("p1", "b1", "carrot", "early", plan.Seed, cal.Of(2027, 4, 5), 1.5, ""),
			planting("p2", "b1", "carrot", "storage", plan.Seed, cal.Of(2027, 5, 25), 3, "sand"),
			planting("p3", "b2", "beetroot", "", plan.Seed, cal.Of(2027, 4, 20), 2, ""),
			planting("p4", "b2", "onion", "sets", plan.Set, cal.Of(2027, 3, 25), 3, "shed"),
		},
		Wants: []larder.Want{
			{ID: "w1", Vegetable: "carrot", KgPerWeek: 0.6}, {ID: "w2", Vegetable: "beetroot", KgPerWeek: 0.3, From: cal.MonthDay{Month: 6, Day: 1}, To: cal.MonthDay{Month: 12, Day: 31}},
			{ID: "w3", Vegetable: "onion", KgPerWeek: 0.4}},
		Stores: []larder.Store{
			{ID: "sand", Name: "Sand box", Method: "damp sand", WinterC: 3, SummerC: 14, CapacityKg: 60},
			{ID: "shed", Name: "Shed", Method: "hung", WinterC: 3, SummerC: 18, CapacityKg: 60}},
		Batches: []larder.Batch{{ID: "a1", Store: "sand", Crop: "carrot", Use: "storage", Kg: 9, Stored: cal.Of(2026, 11, 1)}},
		Weather: []holding.WeatherSource{{ID: "w", Name: "Normals", Normals: &months}},
	}
}

func setting(t testing.TB, h *holding.Holding, workers int) outlook.Setting {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return outlook.Setting{Holding: h, Book: book, Today: h.Today, From: h.Today.Monday(), Weeks: 60, Years: 24, Seed: 1, Workers: workers}
}

func compute(t testing.TB, s outlook.Setting, m *outlook.Memory) *outlook.Table {
	t.Helper()
	table, err := outlook.Compute(s, m)
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// The same seed gives the same bits for any number of workers.
func TestWorkersChangeNothing(t *testing.T) {
	one := compute(t, setting(t, small(), 1), outlook.NewMemory())
	for _, workers := range []int{2, 3, 8} {
		many := compute(t, setting(t, small(), workers), outlook.NewMemory())
		if !reflect.DeepEqual(one.Vegetables, many.Vegetables) || !reflect.DeepEqual(one.Plantings, many.Plantings) {
			t.Errorf("%d workers give another table than one", workers)
		}
	}
}

// A table after an edit is bit for bit the cold one, whatever was edited.
func TestEditEqualsColdRun(t *testing.T) {
	edits := map[string]func(*holding.Holding){
		"date":    func(h *holding.Holding) { h.Plantings[0].Date += 9 },
		"earlier": func(h *holding.Holding) { h.Plantings[2].Date -= 200 },
		"area":    func(h *holding.Holding) { h.Plantings[3].AreaM2 = 1 },
		"store":   func(h *holding.Holding) { h.Plantings[1].Store = "" },
		"want":    func(h *holding.Holding) { h.Wants[1].KgPerWeek = 1 },
		"cover":   func(h *holding.Holding) { h.Covers[0].Off += 20 },
		"sides": func(h *holding.Holding) {
			h.Covers[0].Kind, h.Covers[0].Sides = cover.LowTunnel, cover.OpenSided
		},
		"light":    func(h *holding.Holding) { h.Beds[1].Light = 0.5 },
		"batch":    func(h *holding.Holding) { h.Batches[0].Kg = 2 },
		"capacity": func(h *holding.Holding) { h.Stores[0].CapacityKg = 3 },
		"litres":   func(h *holding.Holding) { h.Stores[0].CapacityKg, h.Stores[0].Litres = 0, 9 },
		"humidity": func(h *holding.Holding) { h.Stores[0].Humidity = larder.Dry },
		"counted": func(h *holding.Holding) {
			h.Records = []record.Record{{ID: "r1", What: record.Counted, Store: "sand", Value: 4, Unit: "kg", Date: cal.Of(2027, 1, 3)}}
		},
		"new": func(h *holding.Holding) {
			p := h.Plantings[0]
			p.ID, p.Date = "p9", p.Date+30
			h.Plantings = append(h.Plantings, p)
		},
		"south": func(h *holding.Holding) { // an empty site, which tells when the stores are cold
			h.Sites = append([]place.Site{{ID: "x", Location: sun.Location{LatitudeDeg: -40}, Weather: "w"}}, h.Sites...)
		},
		"removed": func(h *holding.Holding) { h.Plantings = h.Plantings[1:] },
		"soil":    func(h *holding.Holding) { h.Beds[0].Soil = "poor" },
		"recorded": func(h *holding.Holding) {
			h.Records = []record.Record{{ID: "r1", What: record.Planted, Planting: "p1", Date: cal.Of(2027, 4, 20)}}
		},
		"died": func(h *holding.Holding) {
			h.Records = []record.Record{{ID: "r1", What: record.Died, Planting: "p3", Date: cal.Of(2027, 6, 20)}}
		},
		"variety": func(h *holding.Holding) {
			h.Varieties = []crop.Variety{{ID: "v", Crop: "carrot", Use: "early", DaysOffset: 6, YieldFactor: 1.2, BoltFactor: 1, SizeFactor: 1}}
			h.Plantings[0].Variety = "v"
		},
		"half lost": func(h *holding.Holding) {
			h.Records = append(h.Records, record.Record{ID: "r1", Date: cal.Of(2027, 7, 1), What: record.Died, Planting: "p2", Value: 0.5, Unit: "share"})
		},
		"rough date": func(h *holding.Holding) { h.Plantings[1].DateWithinD = 12 },
		"rough area": func(h *holding.Holding) { h.Plantings[2].AreaWithin = 0.4 },
		"spacing":    func(h *holding.Holding) { h.Plantings[3].InRowM = 0.05 },
		"under":      func(h *holding.Holding) { h.Plantings[0].Relation, h.Plantings[0].To = plan.Under, "p2" },
		"stripped": func(h *holding.Holding) {
			h.Plantings[2].StripOn, h.Plantings[2].StripShare = cal.Of(2027, 6, 20), 0.4
		},
		"moved":      func(h *holding.Holding) { h.Plantings = append(h.Plantings, movedBeetroot()) },
		"own number": func(h *holding.Holding) { h.Plantings[0].Use = "table" },
	}
	for name, edit := range edits {
		m := outlook.NewMemory()
		compute(t, setting(t, small(), 2), m)
		h := small()
		edit(h)
		warm := compute(t, setting(t, h, 2), m)
		cold := compute(t, setting(t, h, 2), outlook.NewMemory())
		if !reflect.DeepEqual(warm.Vegetables, cold.Vegetables) || !reflect.DeepEqual(warm.Plantings, cold.Plantings) {
			t.Errorf("edit %q: the table after it differs from a cold one", name)
		}
		back := compute(t, setting(t, small(), 2), m)
		if !reflect.DeepEqual(back.Vegetables, compute(t, setting(t, small(), 2), outlook.NewMemory()).Vegetables) {
			t.Errorf("edit %q put back does not give the old table", name)
		}
	}
}

// An edit on one bed reshuffles nothing on another.
func TestEditReshufflesNothing(t *testing.T) {
	before := compute(t, setting(t, small(), 2), outlook.NewMemory())
	h := small()
	extra := h.Plantings[0]
	extra.ID, extra.Date = "p0", extra.Date+20
	h.Plantings = append([]plan.Planting{extra}, h.Plantings...)
	after := compute(t, setting(t, h, 2), outlook.NewMemory())
	fates := map[string]outlook.Fate{}
	for _, f := range after.Plantings {
		fates[f.Planting] = f
	}
	for _, f := range before.Plantings {
		if !reflect.DeepEqual(f.Years, fates[f.Planting].Years) {
			t.Errorf("planting %s fares otherwise since another was added", f.Planting)
		}
	}
}

// Weeks add up: fresh, stored and short are the want, shares lie between 0 and
// 1, and quantiles are in order.
func TestSummaryAddsUp(t *testing.T) {
	table := compute(t, setting(t, small(), 2), outlook.NewMemory())
	s := table.Summarise(true)
	for _, v := range s.Vegetables {
		for k := range v.Want {
			if gap := v.Fresh[k] + v.Stored[k] + v.Short[k] - v.Want[k]; math.Abs(gap) > 1e-5 {
				t.Fatalf("%s week %d: %g kg unaccounted for", v.Name, k, gap)
			}
			if v.ShortP10[k] > v.ShortP50[k] || v.ShortP50[k] > v.ShortP90[k] {
				t.Fatalf("%s week %d: quantiles out of order", v.Name, k)
			}
			if c := v.GapChance[k]; c < 0 || c > 1 {
				t.Fatalf("%s week %d: chance %g", v.Name, k, c)
			}
		}
		if len(v.Members) != table.Years {
			t.Errorf("%s: %d members, want %d", v.Name, len(v.Members), table.Years)
		}
	}
	if s.Year <= 0 || s.Year > 1 {
		t.Errorf("home-grown share %g", s.Year)
	}
}

// More years than on file repeat the weather with luck of their own.
func TestSpreadIsMoreThanWeather(t *testing.T) {
	table := compute(t, setting(t, small(), 2), outlook.NewMemory())
	for _, f := range table.Plantings {
		first := total(f.Years[0].Standing)
		alike := true
		for _, y := range f.Years[1:] {
			alike = alike && total(y.Standing) == first
		}
		if alike {
			t.Errorf("planting %s weighs the same in every future", f.Planting)
		}
	}
}

func total(s []float32) (sum float64) {
	for _, v := range s {
		sum += float64(v)
	}
	return sum
}
