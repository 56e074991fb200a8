package barren_test

import (
	"math"
	"slices"
	"testing"

	"garner/internal/barren"
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/draft"
	"garner/internal/gazetteer"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
)

// one is a garden of one bed at a weather station.
func one(t *testing.T, station string, light float64) outlook.Setting {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	normals, where, err := gazetteer.Normals(station, math.NaN())
	if err != nil {
		t.Fatal(err)
	}
	h := &holding.Holding{Zone: "UTC", Today: cal.Of(2027, 3, 1), Eaters: 2, Plan: "p", Plans: []plan.Plan{{ID: "p", Name: "p"}},
		Sites:   []place.Site{{ID: "g", Name: "g", Location: where.Station.Location, Weather: "n"}},
		Weather: []holding.WeatherSource{{ID: "n", Name: where.Station.Name, Normals: &normals}},
		Beds:    []place.Bed{{ID: "b", Site: "g", Name: "b", Kind: "bed", LengthM: 6, WidthM: 1.2, Light: light, Soil: "good", Order: 1}}}
	return outlook.Setting{Holding: h, Book: book, Today: h.Today, From: h.Today.Monday(), Weeks: 78, Years: 20, Seed: 1, Workers: 1}
}

func find(t *testing.T, s outlook.Setting, vegetables ...string) []barren.Vegetable {
	t.Helper()
	found, err := barren.Find(s, vegetables)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// What cannot be grown where, and why (common practice, no source: melons and sweet
// potatoes outdoors fail on the west coast of Ireland and cool roots and leaves do
// well; carrots and tomatoes want an open place; sprouts, peas and spinach fail in
// the lowland tropics, where aubergines and sweet potatoes are at home; hardly a
// vegetable is out of reach by the Mediterranean).
func TestReasonsAreThoseOfThePlace(t *testing.T) {
	for _, c := range []struct {
		where, station string
		light          float64
		vegetables     []string
		want           []barren.Vegetable
	}{
		{"the west of Ireland", "wmo-03953", 1, []string{"kale", "melon", "carrot", "sweet potato", "leek", "rhubarb"},
			[]barren.Vegetable{{"melon", barren.Short}, {"sweet potato", barren.Short}}},
		{"there in deep shade", "wmo-03953", 0.15, []string{"carrot", "tomato"},
			[]barren.Vegetable{{"carrot", barren.Dark}, {"tomato", barren.Dark}}},
		{"Singapore", "wmo-48698", 1, []string{"Brussels sprout", "aubergine", "pea", "spinach", "sweet potato"},
			[]barren.Vegetable{{"Brussels sprout", barren.Hot}, {"pea", barren.Hot}, {"spinach", barren.Hot}}},
		{"Perpignan", "wmo-07747", 1, []string{"melon", "tomato", "leek", "garlic", "pea"}, nil},
		{"anywhere", "wmo-07747", 1, []string{"moonflower"}, []barren.Vegetable{{"moonflower", barren.NotInBook}}},
	} {
		if got := find(t, one(t, c.station, c.light), c.vegetables...); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, not %v", c.where, got, c.want)
		}
	}
}

// Where the soil never warms the reason is cold, not the length of the season.
func TestColdIsToldFromShort(t *testing.T) {
	s := one(t, "wmo-03953", 1)
	n := *s.Holding.Weather[0].Normals
	for i := range n {
		n[i].TMinC, n[i].TMaxC = n[i].TMinC-6, n[i].TMaxC-6
	}
	s.Holding.Weather[0].Normals = &n
	if got := find(t, s, "melon", "kale"); len(got) == 0 || got[0] != (barren.Vegetable{Name: "melon", Why: barren.Cold}) {
		t.Errorf("%v", got)
	}
}

// A tunnel over the bed mends what the open air cannot; without a bed nothing grows.
func TestACoverAndABedMakeTheDifference(t *testing.T) {
	s := one(t, "wmo-03953", 1)
	s.Holding.Covers = []place.CoverSpell{{ID: "c", Bed: "b", Spell: cover.Spell{Kind: cover.Tunnel, On: cal.Of(2026, 1, 1), Off: cal.None}}}
	if got := find(t, s, "melon"); len(got) != 0 {
		t.Errorf("under a tunnel: %v", got)
	}
	s.Holding.Beds, s.Holding.Covers = nil, nil
	if got := find(t, s, "kale"); !slices.Equal(got, []barren.Vegetable{{Name: "kale", Why: barren.NoBed}}) {
		t.Errorf("without a bed: %v", got)
	}
}

// What is found does not hang on what stands in the beds, on the day of the year or on the number
// of workers.
func TestItHangsOnTheGroundAlone(t *testing.T) {
	s := one(t, "wmo-03953", 1)
	names := []string{"melon", "carrot", "celeriac", "garlic", "sprouting broccoli"}
	want := find(t, s, names...)
	for _, month := range []int{1, 5, 8, 11} {
		s.Today = cal.Of(2027, month, 3)
		s.Holding.Today, s.From, s.Workers = s.Today, s.Today.Monday(), month
		p := plan.New("all", "p")
		p.Bed, p.Crop, p.Date, p.AreaM2 = "b", "carrot", s.Today, 7.2
		s.Holding.Plantings = []plan.Planting{p}
		if got := find(t, s, names...); !slices.Equal(got, want) {
			t.Errorf("in month %d: %v, not %v", month, got, want)
		}
	}
}

// What the draft has sowings for can be grown; what cannot be grown has none.
func TestItAgreesWithTheDraft(t *testing.T) {
	s := one(t, "wmo-03953", 0.5)
	names := []string{"aubergine", "carrot", "cucumber", "garlic", "kale", "melon", "pumpkin", "sweetcorn", "tomato"}
	for _, name := range names {
		s.Holding.Wants = append(s.Holding.Wants, larder.Want{ID: name, Vegetable: name, KgPerWeek: 1})
	}
	found := find(t, s, names...)
	if len(found) == 0 || len(found) == len(names) {
		t.Fatalf("%v of %v", found, names)
	}
	own := s
	own.Years = draft.Futures
	d, err := draft.Build(draft.Setting{Setting: own})
	if err != nil {
		t.Fatal(err)
	}
	sown := map[string]bool{}
	for i := range d.Columns {
		sown[d.Columns[i].Use.Vegetable] = true
	}
	for _, v := range found {
		if sown[v.Name] {
			t.Errorf("%s is drafted and yet cannot be grown: %s", v.Name, v.Why)
		}
	}
	for name := range sown {
		if slices.ContainsFunc(found, func(v barren.Vegetable) bool { return v.Name == name }) {
			t.Errorf("%s is drafted", name)
		}
	}
	t.Logf("%v; drafted are %v", found, sown)
}

// What the gear in stock would let grow can be grown, without a cover that is planned: in
// half the light inland, turnips draw out only below one. Nothing that a draft has sowings
// for, covers and all, is found to be beyond the beds.
func TestItCountsTheGearOfTheDraft(t *testing.T) {
	s := one(t, "wmo-12375", 0.5)
	names := []string{"coriander", "kale", "mustard greens", "pumpkin", "salsify", "turnip"}
	for _, name := range names {
		s.Holding.Wants = append(s.Holding.Wants, larder.Want{ID: name, Vegetable: name, KgPerWeek: 1})
	}
	has := func(found []barren.Vegetable, name string) bool {
		return slices.ContainsFunc(found, func(v barren.Vegetable) bool { return v.Name == name })
	}
	if found := find(t, s, names...); !has(found, "turnip") || !has(found, "pumpkin") {
		t.Errorf("without gear: %v", found)
	}
	s.Holding.Gear = []place.Gear{{ID: "film", Kind: "film", Pieces: 1, LengthM: 9, WidthM: 3}, {ID: "hoops", Kind: "hoop", Pieces: 12}}
	found := find(t, s, names...)
	if has(found, "turnip") || !has(found, "pumpkin") {
		t.Errorf("with film and hoops: %v", found)
	}
	own := s
	own.Years = draft.Futures
	d, err := draft.Build(draft.Setting{Setting: own})
	if err != nil {
		t.Fatal(err)
	}
	sown := map[string]bool{}
	for i := range d.Columns {
		sown[d.Columns[i].Use.Vegetable] = true
	}
	for name := range sown {
		if has(found, name) {
			t.Errorf("%s is drafted and yet cannot be grown: %v", name, found)
		}
	}
	if !sown["turnip"] {
		t.Errorf("drafted are %v", sown)
	}
	s.Holding.Gear[0].LengthM = 2 // too short for the bed
	if found := find(t, s, names...); !has(found, "turnip") {
		t.Errorf("with a scrap of film: %v", found)
	}
}
