package draft

import (
	"fmt"
	"math"

	"garner/internal/appetite"
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/gazetteer"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
)

// Case is one of the benchmark's planning problems before it is built.
type Case struct {
	Name    string
	Beds    int
	Setting Setting
}

// climates are where the benchmark's gardens lie: by the western sea, inland with
// hard winters, by the warm sea, and in the south.
var climates = []struct{ name, station string }{
	{"maritime", "wmo-03953"},
	{"continental", "wmo-12375"},
	{"mediterranean", "wmo-07747"},
	{"southern", "wmo-93780"},
}

// sizes are the benchmark's gardens: beds, and who eats from them.
var sizes = []struct {
	beds, vegetables int
	household        appetite.Household
}{
	{10, 12, appetite.Household{Adults: 2}},
	{30, 24, appetite.Household{Adults: 3, Children: 2}},
	{80, 40, appetite.Household{Adults: 8, Children: 4}},
}

// benchmarkWeeks is the length of the benchmark's problems.
const benchmarkWeeks = 78

// Benchmark makes twelve invented gardens, three sizes in each of four climates,
// without anything in the ground, with wants drawn from a seed. The same seed gives
// the same problems.
func Benchmark(book *crop.Book, seed uint64) ([]Case, error) {
	var out []Case
	for _, size := range sizes {
		for _, c := range climates {
			name := fmt.Sprintf("%s-%d", c.name, size.beds)
			luck := num.Keyed(seed, num.Key(name))
			h, err := invented(book, c.station, size.beds, size.vegetables, size.household, &luck)
			if err != nil {
				return nil, err
			}
			h.ID, h.Name = name, name
			out = append(out, Case{Name: name, Beds: size.beds, Setting: Setting{Setting: outlook.Setting{Holding: h, Book: book,
				Today: h.Today, From: h.Today.Monday(), Weeks: benchmarkWeeks, Years: Futures, Seed: seed, Workers: 1}}})
		}
	}
	return out, nil
}

// invented is one garden with its household.
func invented(book *crop.Book, station string, beds, vegetables int, household appetite.Household, luck *num.Stream) (*holding.Holding, error) {
	normals, where, err := gazetteer.Normals(station, math.NaN()) // at the station's own height
	if err != nil {
		return nil, err
	}
	household.South = where.Station.Location.LatitudeDeg < 0
	h := &holding.Holding{Zone: "UTC", Today: firstDay(household.South), Eaters: household.Eaters(), Plan: "plan",
		Plans:   []plan.Plan{{ID: "plan", Name: "plan"}},
		Sites:   []place.Site{{ID: "garden", Name: "garden", Location: where.Station.Location, Weather: "normals"}},
		Weather: []holding.WeatherSource{{ID: "normals", Name: where.Station.Name, Normals: &normals}},
		Stores: []larder.Store{
			{ID: "cellar", Name: "cellar", Method: "cool shed", WinterC: 6, SummerC: 15, CapacityKg: 60 * household.Eaters()},
			{ID: "sand", Name: "sand", Method: "damp sand", WinterC: 5, SummerC: 14, CapacityKg: 30 * household.Eaters()},
			{ID: "freezer", Name: "freezer", Method: larder.Frozen, WinterC: larder.FreezerC, SummerC: larder.FreezerC, CapacityKg: 15 * household.Eaters()},
		},
		Wants: appetite.Wants(book, household, ticked(book, household.South, vegetables, luck)),
	}
	for i := range beds {
		h.Beds = append(h.Beds, bedOf(i, luck))
		if b := &h.Beds[i]; b.Kind == "tunnel" {
			h.Covers = append(h.Covers, place.CoverSpell{ID: "over-" + b.ID, Bed: b.ID, Spell: cover.Spell{Kind: cover.Tunnel, On: cal.Of(2026, 1, 1), Off: cal.None}})
		}
	}
	return h, nil
}

// firstDay is a Monday at the end of winter.
func firstDay(south bool) cal.Date {
	if south {
		return cal.Of(2026, 8, 31)
	}
	return cal.Of(2027, 3, 1)
}

// bedOf is one bed of a garden: most lie in the open, a few under a tunnel or in the
// shade of something.
func bedOf(i int, luck *num.Stream) place.Bed {
	b := place.Bed{ID: fmt.Sprintf("bed-%d", i+1), Site: "garden", Kind: "bed", LengthM: 6, WidthM: 1.2, Light: 1, Soil: "good", Order: i + 1}
	b.Name = b.ID
	switch u := luck.Float64(); {
	case u < 0.15:
		b.Kind = "tunnel"
	case u < 0.3:
		b.Light = 0.75
	}
	return b
}

// ticked draws which vegetables are eaten and how often: so many of those on offer,
// each as often as is usual or, one in four, as often as another.
func ticked(book *crop.Book, south bool, vegetables int, luck *num.Stream) map[string]appetite.Tick {
	out := map[string]appetite.Tick{}
	all := appetite.Ticks()
	offered := appetite.Offered(book, south)
	for last := len(offered) - 1; last >= 0 && len(out) < vegetables; last-- {
		at := luck.IntN(last + 1)
		o := offered[at]
		offered[at] = offered[last]
		if luck.Float64() < 0.25 {
			o.Usual = all[luck.IntN(len(all))]
		}
		if o.Usual != appetite.Never {
			out[o.Vegetable] = o.Usual
		}
	}
	return out
}
