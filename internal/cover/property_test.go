package cover

import (
	"math"
	"testing"

	"garner/internal/climate"

	"pgregory.net/rapid"
)

// anyDay draws a day outside and the radiation above the air.
func anyDay(t *rapid.T) (climate.Day, float64) {
	low := rapid.Float64Range(-30, 30).Draw(t, "minimum")
	ra := rapid.Float64Range(0, 45).Draw(t, "above the air")
	return climate.Day{
		TMinC:       low,
		TMaxC:       low + rapid.Float64Range(0, 25).Draw(t, "range"),
		RainMM:      rapid.Float64Range(0, 80).Draw(t, "rain"),
		RadiationMJ: rapid.Float64Range(0, 0.85).Draw(t, "clearness") * ra,
		HumidityPct: rapid.Float64Range(10, 100).Draw(t, "humidity"),
		WindMS:      rapid.Float64Range(0, 12).Draw(t, "wind"),
	}, ra
}

// TestBounds: no cover adds light, rain or wind; humidity stays a share; the
// maximum is never under the minimum; nothing is undefined.
func TestBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out, ra := anyDay(t)
		for _, kind := range Kinds() {
			in := lookup(t, kind).Under(out, ra)
			if in.RadiationMJ > out.RadiationMJ || in.RainMM > out.RainMM || in.WindMS > out.WindMS {
				t.Fatalf("%s adds light, rain or wind: %+v under %+v", kind, in, out)
			}
			if !(in.HumidityPct >= 0 && in.HumidityPct <= 100) || !(in.TMaxC >= in.TMinC) {
				t.Fatalf("%s: %+v", kind, in)
			}
			if kind != Indoors && (in.TMinC < out.TMinC-2 || in.TMaxC < out.TMaxC || in.TMaxC > out.TMaxC+35) {
				t.Fatalf("%s: %+v under %+v", kind, in, out)
			}
		}
	})
}

// TestOpenIsTheDay: the open ground gets the day bit for bit.
func TestOpenIsTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out, ra := anyDay(t)
		if in := lookup(t, Open).Under(out, ra); in != out {
			t.Fatalf("%+v became %+v", out, in)
		}
	})
}

// TestMoreSun: more sun never lowers the maximum or the light, and never
// raises the minimum (the same sky by night).
func TestMoreSun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out, ra := anyDay(t)
		more := out
		more.RadiationMJ += rapid.Float64Range(0, 20).Draw(t, "more")
		for _, kind := range Kinds() {
			dull, bright := lookup(t, kind).Under(out, ra), lookup(t, kind).Under(more, ra)
			if bright.TMaxC < dull.TMaxC-1e-9 || bright.RadiationMJ < dull.RadiationMJ || bright.TMinC > dull.TMinC+1e-9 {
				t.Fatalf("%s: %+v dull, %+v bright", kind, dull, bright)
			}
		}
	})
}

// TestWarmerOutside: a warmer day outside is never colder under a cover.
func TestWarmerOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out, ra := anyDay(t)
		warm := out
		add := rapid.Float64Range(0, 15).Draw(t, "warmer")
		warm.TMinC, warm.TMaxC = out.TMinC+add, out.TMaxC+add
		for _, kind := range Kinds() {
			a, b := lookup(t, kind).Under(out, ra), lookup(t, kind).Under(warm, ra)
			if b.TMinC < a.TMinC-1e-9 || b.TMaxC < a.TMaxC-1e-9 {
				t.Fatalf("%s: %+v, then warmer outside %+v", kind, a, b)
			}
		}
	})
}

// TestMoreCoverLessLight: a further layer never gives more light, and never a
// colder night.
func TestMoreCoverLessLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out, ra := anyDay(t)
		for _, pair := range [][2]Kind{{Open, Mesh}, {Open, Fleece}, {Open, Tunnel}, {Tunnel, TunnelTwo},
			{Tunnel, TunnelInner}, {Fleece, TunnelInner}} {
			less, more := lookup(t, pair[0]).Under(out, ra), lookup(t, pair[1]).Under(out, ra)
			if more.RadiationMJ > less.RadiationMJ {
				t.Fatalf("%s has more light than %s", pair[1], pair[0])
			}
		}
		one, two := lookup(t, Tunnel).Under(out, ra), lookup(t, TunnelInner).Under(out, ra)
		if two.TMinC < one.TMinC-1e-9 {
			t.Fatalf("fleece makes the tunnel's night colder: %v under %v", two.TMinC, one.TMinC)
		}
	})
}

// TestOpening: a cover follows the air without a jump as it is opened.
func TestOpening(t *testing.T) {
	for _, kind := range Kinds() {
		c := lookup(t, kind)
		last := math.NaN()
		for tmax := -10.0; tmax < 45; tmax += 0.01 {
			in := c.Under(climate.Day{TMinC: tmax - 5, TMaxC: tmax, RadiationMJ: 15, WindMS: 2}, 30)
			if math.Abs(in.TMaxC-last) > 0.0101 {
				t.Fatalf("%s jumps from %v to %v at %v", kind, last, in.TMaxC, tmax)
			}
			last = in.TMaxC
		}
	}
}

// TestNothingAllocated: the day loop calls Under millions of times.
func TestNothingAllocated(t *testing.T) {
	c := lookup(t, TunnelInner)
	day := climate.Day{TMinC: 1, TMaxC: 9, RadiationMJ: 5, WindMS: 2, HumidityPct: 80}
	if n := testing.AllocsPerRun(100, func() { day = c.Under(day, 10) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func lookup(t interface{ Fatal(...any) }, kind Kind) *Cover {
	c, err := Lookup(kind)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
