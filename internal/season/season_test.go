package season_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
	"garner/internal/sun"
)

// deBilt are monthly means 1980-2019 of KNMI station 260, De Bilt (KNMI open
// data, CC BY 4.0): tmin, tmax, rain, radiation.
var deBilt = [12][4]float64{
	{0.45, 5.73, 72.2, 2.50}, {0.27, 6.59, 56.1, 4.68}, {2.21, 10.16, 63.1, 8.48}, {4.20, 14.22, 42.6, 13.72},
	{7.84, 18.13, 59.5, 17.44}, {10.63, 20.54, 68.2, 18.21}, {12.86, 22.83, 84.6, 17.55}, {12.33, 22.58, 74.8, 15.03},
	{9.96, 19.25, 75.8, 10.56}, {7.04, 14.80, 82.1, 6.29}, {3.69, 9.70, 78.1, 2.97}, {1.50, 6.61, 80.2, 1.93},
}

func normals(shift int) climate.Normals {
	var n climate.Normals
	for i := range n {
		m := deBilt[(i+shift)%12]
		n[i] = climate.MonthNormal{TMinC: m[0], TMaxC: m[1], RainMM: m[2], RadiationMJ: climate.Is(m[3])}
	}
	return n
}

var (
	north = sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.2, ElevationM: 2}
	south = sun.Location{LatitudeDeg: -52.1, LongitudeDeg: 5.2, ElevationM: 2}
	first = cal.Of(2001, 1, 1)
)

const span = 3 * 365

func weather(t testing.TB, seed uint64) []climate.Day {
	t.Helper()
	g, err := climate.NewGenerator(normals(0), north)
	if err != nil {
		t.Fatal(err)
	}
	return g.Days(seed, 0, 0, first, span)
}

type field struct {
	sky    *season.Sky
	beside season.Bedside
	runner season.Runner
}

func newField(t testing.TB, at sun.Location, days []climate.Day, g season.Ground) *field {
	t.Helper()
	f := &field{sky: season.NewSky(at, first, len(days))}
	if err := f.beside.Build(f.sky, days, g, 0); err != nil {
		t.Fatal(err)
	}
	return f
}

func use(t testing.TB, name string) *crop.Use {
	t.Helper()
	_, u, err := testBook(t).Find(name)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

var loaded *crop.Book

func testBook(t testing.TB) *crop.Book {
	t.Helper()
	if loaded == nil {
		b, err := crop.Load()
		if err != nil {
			t.Fatal(err)
		}
		loaded = b
	}
	return loaded
}

// everyUse calls f for each annual use of the book with its commonest start.
func everyUse(t *testing.T, f func(*crop.Use, growth.Start)) {
	t.Helper()
	for _, c := range testBook(t).Crops() {
		for _, u := range c.Uses {
			if u.Pattern != crop.Perennial {
				f(u, growth.StartOf(u.Methods[0]))
			}
		}
	}
}

func (f *field) grow(u *crop.Use, s growth.Start, date cal.Date, each func(int, *growth.Plants)) season.Outcome {
	p := season.Planting{Parameters: growth.Prepare(u, s, f.sky.Northern()), Date: date, AreaM2: 1, ClearBy: cal.None, Soil: 1}
	return f.runner.Follow(f.sky, &f.beside, &p, growth.Fair(u), each)
}

// With the same warmth and ample water, more shade never gives more on the
// ground on any day before picking begins, nor an earlier crop.
func TestShadeNeverHelps(t *testing.T) {
	days := weather(t, 7)
	light := []float64{1, 0.8, 0.6, 0.4, 0.2}
	everyUse(t, func(u *crop.Use, s growth.Start) {
		day, _ := cal.ParseMonthDay(u.ReferenceDate)
		var before []float64
		ready := -1
		for k, l := range light {
			f := newField(t, north, days, season.Ground{Light: l})
			var leaf []float64
			o := f.grow(u, s, day.In(2001), func(_ int, p *growth.Plants) { leaf = append(leaf, min(1, p.Development)) })
			if k > 0 {
				for i := range min(len(leaf), len(before)) {
					if leaf[i] > before[i]+1e-9 {
						t.Errorf("%s %s: day %d further on in light %g than in more", u.Crop, u.Name, i, l)
						break
					}
				}
				if o.Ready >= 0 && ready >= 0 && o.Ready < ready {
					t.Errorf("%s %s: ready earlier in light %g", u.Crop, u.Name, l)
				}
			}
			before, ready = leaf, o.Ready
		}
	})
}

// A later autumn sowing is never ready before an earlier one in the same
// weather.
func TestLaterSowingIsNeverReadyEarlier(t *testing.T) {
	f := newField(t, north, weather(t, 3), season.Ground{Light: 1})
	everyUse(t, func(u *crop.Use, s growth.Start) {
		last, from := -1, cal.None
		for d := cal.Of(2001, 7, 1); d < cal.Of(2001, 11, 1); d += 7 {
			o := f.grow(u, s, d, nil)
			if o.Ready < 0 {
				continue
			}
			if o.Ready < last {
				t.Errorf("%s %s: put in %s ready day %d, put in %s already day %d", u.Crop, u.Name, from, last, d, o.Ready)
			}
			last, from = o.Ready, d
		}
	})
}

// The same weather half a year on, on the other side of the globe, moves every
// date by half a year, to a week: the year's halves are unequal by five days
// (Kepler), which daylength gates see.
func TestHemispheresMirror(t *testing.T) {
	const half = 182
	days := weather(t, 5)
	f := newField(t, north, days[:span-half], season.Ground{Light: 1})
	// The southern site sees the same days shifted; its own sun must make the
	// same of them.
	shifted := append(append([]climate.Day{}, days[:half]...), days[:span-half]...)
	g := newField(t, south, shifted, season.Ground{Light: 1})
	everyUse(t, func(u *crop.Use, s growth.Start) {
		day, _ := cal.ParseMonthDay(u.ReferenceDate)
		n := f.grow(u, s, day.In(2001), nil)
		m := g.grow(u, s, day.In(2001)+half, nil)
		if n.Ready < 0 || m.Ready < 0 {
			if (n.Ready < 0) != (m.Ready < 0) {
				t.Errorf("%s %s: ready %d in the north, %d in the south", u.Crop, u.Name, n.Ready, m.Ready)
			}
			return
		}
		if gap := m.Ready - half - n.Ready; gap < -7 || gap > 7 {
			t.Errorf("%s %s: %d days apart from half a year", u.Crop, u.Name, gap)
		}
	})
}

// All plantings of a bed step together: two that share no ground fare exactly as
// each does alone.
func TestNeighboursWithoutSharedGroundAreAlone(t *testing.T) {
	f := newField(t, north, weather(t, 9), season.Ground{Light: 0.9})
	u := use(t, "carrot")
	one := season.Planting{ID: "a", Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 4, 10), AreaM2: 2, ClearBy: cal.None, Shares: -1, Soil: 1}
	two := one
	two.ID, two.Date = "b", cal.Of(2001, 5, 20)
	draws := []growth.Draw{growth.Fair(u), {Yield: 1.3, DaysLater: 5, Loss: 0.1}}
	both := f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: []season.Planting{one, two}}, draws)
	for i, p := range []season.Planting{one, two} {
		alone := f.runner.Follow(f.sky, &f.beside, &p, draws[i], nil)
		if alone.Ready != both[i].Ready || len(alone.Standing) != len(both[i].Standing) {
			t.Errorf("planting %s: ready %d together, %d alone", p.ID, both[i].Ready, alone.Ready)
		}
	}
}

// A crop under another never stands better for it.
func TestUnderCropLosesLight(t *testing.T) {
	f := newField(t, north, weather(t, 11), season.Ground{Light: 1})
	u := use(t, "carrot")
	under := season.Planting{ID: "under", Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 6, 1), AreaM2: 1, ClearBy: cal.None, Shares: -1, Soil: 1}
	tall := *u
	tall.HeightM = 2
	upper := under
	upper.ID, upper.Parameters, upper.Date = "upper", growth.Prepare(&tall, growth.FromSeed, true), cal.Of(2001, 4, 25)
	draws := []growth.Draw{growth.Fair(u), growth.Fair(u)}
	apart := f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: []season.Planting{under, upper}}, draws)
	under.Shares, under.Beneath = 1, 1
	shared := f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: []season.Planting{under, upper}}, draws)
	if got, want := total(shared[0].Standing), total(apart[0].Standing); got >= want {
		t.Errorf("under-crop stands %g beneath, %g in the open", got, want)
	}
	low := total(shared[0].Standing) / total(apart[0].Standing)
	high := total(shared[1].Standing) / total(apart[1].Standing)
	if high > 1 || 1-high > 0.1*(1-low) {
		t.Errorf("the upper crop keeps %g of its weight, the lower %g", high, low)
	}
}

func total(s []float32) (sum float64) {
	for _, v := range s {
		sum += float64(v)
	}
	return sum
}

// A cover is a spell: outside it the bed is open, bit for bit.
func TestCoverSpellEnds(t *testing.T) {
	days := weather(t, 13)
	open := newField(t, north, days, season.Ground{Light: 1})
	g := season.Ground{Light: 1, Spells: []cover.Spell{{Kind: cover.Tunnel, On: cal.Of(2001, 10, 1), Off: cal.Of(2002, 4, 1)}}}
	covered := newField(t, north, days, g)
	inside := int(cal.Of(2001, 12, 1) - first)
	if open.beside.Air[inside].PARMJ <= covered.beside.Air[inside].PARMJ {
		t.Error("no light lost under film")
	}
	for _, d := range []cal.Date{cal.Of(2001, 9, 30), cal.Of(2002, 4, 1)} {
		i := int(d - first)
		if open.beside.Air[i].TMinC != covered.beside.Air[i].TMinC {
			t.Errorf("%s is not open", d)
		}
	}
}

// BenchmarkCropDay times one planting for one day, all rates and states.
func BenchmarkCropDay(b *testing.B) {
	f := newField(b, north, weather(b, 1), season.Ground{Light: 1})
	u := use(b, "carrot")
	p := season.Planting{Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 5, 1), AreaM2: 1, ClearBy: cal.None, Shares: -1, Soil: 1}
	days := 0
	b.ReportAllocs()
	b.ResetTimer()
	for n := 0; n < b.N; n++ {
		_, _ = f.runner.Usable(f.sky, &f.beside, &p, p.Date, growth.Fair(u))
		days += 90
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(days), "ns/crop-day(approx)")
}
