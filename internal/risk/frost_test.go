package risk

import (
	"math"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/sun"
	"garner/internal/words"
)

// nights makes the same few nights in a hundred futures, the k-th of a night k
// hundredths of the spread warmer.
func nights(minimums ...float64) *Ahead {
	a := &Ahead{First: cal.Of(2027, 5, 10)}
	for i := range 100 {
		var days []climate.Day
		for _, m := range minimums {
			low := m + 4*float64(i)/99
			days = append(days, climate.Day{TMinC: low, TMaxC: low + 14, RadiationMJ: 20, HumidityPct: 70, WindMS: 2})
		}
		a.Days = append(a.Days, days)
	}
	for d := range minimums {
		a.AboveMJ = append(a.AboveMJ, sun.ExtraterrestrialMJ(52, (a.First+cal.Date(d)).DayOfYear()))
	}
	return a
}

func useOf(t *testing.T, name, use string) *crop.Use {
	t.Helper()
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	c, ok := b.Crop(name)
	if !ok {
		t.Fatalf("no crop %s", name)
	}
	if use == "" {
		return c.Uses[0]
	}
	u, err := c.Use(use)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// The odds of a night in the open are the share of futures under the damage
// temperature, counted by hand; a stand that is not hurt has no alarm.
func TestFrostOddsByHand(t *testing.T) {
	tomato := Stand{Use: useOf(t, "tomato", ""), AgeD: 40}
	if !tomato.Tender() {
		t.Errorf("tomatoes are hurt under %g C only", tomato.DamageC())
	}
	damage := tomato.DamageC()
	a := nights(damage-2, damage+0.01) // half the futures, none
	alarms, err := a.Alarms(tomato, nil, 0.05)
	if err != nil || len(alarms) != 1 || alarms[0].Date != a.First || math.Abs(alarms[0].Odds-0.5) > 0.011 || alarms[0].Under != cover.Open {
		t.Errorf("alarms %+v, %v", alarms, err)
	}
	parsnip := Stand{Use: useOf(t, "parsnip", ""), AgeD: 200, Harden: 1}
	if parsnip.Tender() {
		t.Errorf("hardened parsnips are hurt under %g C", parsnip.DamageC())
	}
	if alarms, _ = a.Alarms(parsnip, nil, 0.05); len(alarms) != 0 {
		t.Errorf("parsnips have alarms: %+v", alarms)
	}
}

// A cover saves where the lift of its own package says so, and only those at hand
// are named; a colder night never has smaller odds.
func TestWhichCoverSaves(t *testing.T) {
	s := Stand{Use: useOf(t, "courgette", ""), AgeD: 10}
	damage := s.DamageC()
	a := nights(damage - 1.5)
	hand := []cover.Kind{cover.Mesh, cover.Fleece, cover.Cloche, cover.ColdFrame, cover.Tunnel}
	alarms, err := a.Alarms(s, hand, 0.05)
	if err != nil || len(alarms) != 1 {
		t.Fatalf("%+v, %v", alarms, err)
	}
	for _, kind := range hand {
		over, err := cover.Lookup(kind)
		if err != nil {
			t.Fatal(err)
		}
		hurt := 0
		for _, days := range a.Days {
			if over.Under(days[0], a.AboveMJ[0]).TMinC < damage {
				hurt++
			}
		}
		saves := slices.ContainsFunc(alarms[0].Saves, func(c CoverOdds) bool { return c.Kind == kind })
		if saves != (hurt <= 5) {
			t.Errorf("%s: saves is %v, %d of 100 are hurt under it", kind, saves, hurt)
		}
	}
	if len(alarms[0].Saves) == 0 || len(alarms[0].Saves) == len(hand) {
		t.Errorf("the night tells covers not apart: %+v", alarms[0].Saves)
	}
	before := 0.0
	for _, colder := range []float64{0, 1, 2, 3} {
		alarms, err := nights(damage-colder-0.5).Alarms(s, nil, 0)
		if err != nil || len(alarms) != 1 || alarms[0].Odds < before {
			t.Errorf("%g colder: %+v, %v", colder, alarms, err)
			continue
		}
		before = alarms[0].Odds
	}
}

// Fleece in a tunnel is a cover within a cover; nothing else is laid twice.
func TestFleeceInATunnel(t *testing.T) {
	for _, c := range []struct {
		under, kind, want cover.Kind
		ok                bool
	}{{cover.Tunnel, cover.Fleece, cover.TunnelInner, true}, {cover.Open, cover.Fleece, cover.Fleece, true},
		{cover.Fleece, cover.Fleece, "", false}, {cover.Glasshouse, cover.Tunnel, "", false}} {
		if got, ok := added(c.under, c.kind); got != c.want || ok != c.ok {
			t.Errorf("%s over %s: %s %v", c.kind, c.under, got, ok)
		}
	}
}

// A tenth and nine tenths of the blossom are lost at the published temperatures.
// Source: Penn State Extension after Washington State University EB0419: 28 and 25 F
// kill a tenth and nine tenths of apples in full bloom.
func TestBlossom(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for i := range b.Blossoms {
		x := &b.Blossoms[i]
		if _, ok := book.Crop(x.Crop); !ok {
			t.Errorf("no crop %s", x.Crop)
		}
		if math.Abs(x.Lost(x.Kill10C)-0.1) > 1e-9 || math.Abs(x.Lost(x.Kill90C)-0.9) > 1e-9 || x.Lost(5) != 0 || x.Lost(-30) != 1 {
			t.Errorf("%+v", *x)
		}
		if x.Crop == "apple" && x.Stage == "full_bloom" {
			if math.Abs(x.Kill10C-(28-32)/1.8) > 0.05 || math.Abs(x.Kill90C-(25-32)/1.8) > 0.05 {
				t.Errorf("apples in full bloom: %+v", *x)
			}
			odds, err := nights(x.Kill10C-2).BlossomOdds(x, nil)
			if err != nil || math.Abs(odds[0]-0.5) > 0.011 {
				t.Errorf("odds %v, %v", odds, err)
			}
		}
	}
}

// Heat is of its crops and covers, begins at its lower figure, and has its text.
// Common practice, no source: doors from 25 C, poor set above 32-35 C, lettuce seed
// from 25-28 C.
func TestHeat(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	fired := func(name string, kind cover.Kind, maxC, soilC float64) (out []string) {
		for i := range b.Heats {
			h := &b.Heats[i]
			if h.For(name, kind) && h.Fires(&climate.Day{TMaxC: maxC}, soilC) {
				out = append(out, h.ID)
			}
			if !words.English().Has(h.Does().Key) {
				t.Errorf("no text for %s", h.ID)
			}
		}
		return out
	}
	for _, c := range []struct {
		crop       string
		kind       cover.Kind
		maxC, soil float64
		want       []string
	}{
		{"tomato", cover.Open, 31, 20, nil},
		{"tomato", cover.Open, 33, 20, []string{"poor_set"}},
		{"tomato", cover.Tunnel, 33, 20, []string{"open_doors", "shade_net", "poor_set"}},
		{"carrot", cover.Tunnel, 26, 20, []string{"open_doors"}},
		{"lettuce", cover.Open, 24, 26, []string{"sleeping_seed"}},
		{"carrot", cover.Open, 36, 30, nil},
	} {
		if got := fired(c.crop, c.kind, c.maxC, c.soil); !slices.Equal(got, c.want) {
			t.Errorf("%s, %s, %g C: %v, want %v", c.crop, c.kind, c.maxC, got, c.want)
		}
	}
	for i := range b.Heats {
		if h := &b.Heats[i]; h.Degree(h.FromC-1) != 0 || h.Degree(h.ToC) != 1 {
			t.Errorf("%+v", *h)
		}
	}
	doors := &b.Heats[0]
	open, err := nights(20).HeatOdds(doors, nil)
	if err != nil || open[0] != 1 {
		t.Errorf("%v %v", open, err)
	}
}

// The odds of futures drawn from a record rise under no cover and fall under one.
func TestLookDrawsFutures(t *testing.T) {
	n := climate.Normals{}
	for m := range n {
		c := 9 - 8*math.Cos(2*math.Pi*(float64(m)-0.5)/12)
		n[m] = climate.MonthNormal{TMinC: c - 4, TMaxC: c + 5, RainMM: 50}
	}
	loc := sun.Location{LatitudeDeg: 52, LongitudeDeg: 0, ElevationM: 50}
	f, err := climate.NewFutures(loc, climate.Source{Normals: &n}, cal.Of(2027, 5, 1))
	if err != nil {
		t.Fatal(err)
	}
	a := Look(f, loc, 1, 0, cal.Of(2027, 5, 1), 14, 200)
	s := Stand{Use: useOf(t, "courgette", ""), AgeD: 10}
	hurt := func(in *climate.Day) bool { return in.TMinC < s.DamageC() }
	for day := range 14 {
		open, err := a.share(nil, day, hurt)
		if err != nil || open <= 0 || open >= 0.9 {
			t.Errorf("day %d: odds %g, %v", day, open, err)
		}
		frame, err := a.share([]cover.Spell{{Kind: cover.ColdFrame, On: a.First, Off: cal.None}}, day, hurt)
		if err != nil || frame > open {
			t.Errorf("day %d: %g in a frame, %g in the open", day, frame, open)
		}
	}
}
