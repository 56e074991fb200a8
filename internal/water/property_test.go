package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/climate"
)

// anyDay draws a day at the ground and its light.
func anyDay(t *rapid.T) (climate.Day, Light) {
	d := climate.Day{TMinC: rapid.Float64Range(-35, 30).Draw(t, "tmin")}
	d.TMaxC = d.TMinC + rapid.Float64Range(0, 25).Draw(t, "range")
	d.HumidityPct = rapid.Float64Range(3, 100).Draw(t, "humidity")
	d.WindMS = rapid.Float64Range(0, 15).Draw(t, "wind")
	return d, Light{RadiationMJ: rapid.Float64Range(0, 35).Draw(t, "radiation"),
		Cloudless: rapid.Float64Range(0.3, 1).Draw(t, "cloudless"), Sky: rapid.Float64Range(0, 1).Draw(t, "sky")}
}

// More light never asks less; nor does drier air, nor ground that sees less of
// the cold sky. No day asks less than nothing.
func TestMoreLightNeverAsksLess(t *testing.T) {
	place := NewPlace(100)
	rapid.Check(t, func(t *rapid.T) {
		d, l := anyDay(t)
		asks := place.ReferenceMM(&d, l)
		if !(asks >= 0 && asks < 50) {
			t.Fatalf("a day asks %v mm", asks)
		}
		lighter, hidden, drier := l, l, d
		lighter.RadiationMJ += rapid.Float64Range(0, 10).Draw(t, "more")
		if more := place.ReferenceMM(&d, lighter); more < asks {
			t.Fatalf("%v mm in %v MJ, %v in %v", more, lighter.RadiationMJ, asks, l.RadiationMJ)
		}
		hidden.Sky *= 0.5
		if more := place.ReferenceMM(&d, hidden); more < asks-1e-12 {
			t.Fatalf("%v mm under half the sky, %v under all", more, asks)
		}
		a := place.Air(&drier, l)
		a.DeficitKPa *= 1.5
		if more := a.ReferenceMM(); more < asks {
			t.Fatalf("%v mm in drier air, %v before", more, asks)
		}
	})
}

// Without wind only the radiation counts, whatever the dryness of the air; a
// place stirs still air to the least wind.
func TestStillAir(t *testing.T) {
	a := Air{MeanC: 20, DeficitKPa: 1.5, AvailableMJ: 12, PsychrometricKPaC: 0.067}
	slope := SlopeKPaC(20)
	if got, want := a.ReferenceMM(), 0.408*12*slope/(slope+0.067); math.Abs(got-want) > 1e-12 {
		t.Errorf("still air asks %v mm, the radiation alone %v", got, want)
	}
	d := climate.Day{TMinC: 10, TMaxC: 20, HumidityPct: 60}
	if w := NewPlace(0).Air(&d, Light{}).WindMS; w != LeastWindMS {
		t.Errorf("a still day is reckoned with %v m/s", w)
	}
}

// Air that is full of water and ground without light ask nothing.
func TestNothingIsAsked(t *testing.T) {
	d := climate.Day{TMinC: 12, TMaxC: 12, HumidityPct: 100, WindMS: 3}
	if mm := NewPlace(0).ReferenceMM(&d, Light{Cloudless: 0.3, Sky: 1}); mm != 0 {
		t.Errorf("%v mm", mm)
	}
}

// How clear a day is, is held to its range, also where the sun does not rise.
func TestCloudlessIsHeld(t *testing.T) {
	for _, c := range [][3]float64{{0, 0, 0.3}, {1, 20, 0.3}, {10, 20, 0.5}, {30, 20, 1}} {
		if got := Cloudless(c[0], c[1]); got != c[2] {
			t.Errorf("%v of %v MJ: %v, want %v", c[0], c[1], got, c[2])
		}
	}
}

// A day is worked out in one pass, and nothing is put on the heap.
func TestADayNeedsNoMemory(t *testing.T) {
	place := NewPlace(100)
	d := climate.Day{TMinC: 12, TMaxC: 21, HumidityPct: 70, WindMS: 2}
	sum := 0.0
	if n := testing.AllocsPerRun(100, func() {
		sum += place.ReferenceMM(&d, Light{RadiationMJ: 20, Cloudless: 0.7, Sky: 1})
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkReferenceMM(b *testing.B) {
	place := NewPlace(100)
	d := climate.Day{TMinC: 12, TMaxC: 21, HumidityPct: 70, WindMS: 2}
	sum := 0.0
	for i := range b.N {
		sum += place.ReferenceMM(&d, Light{RadiationMJ: float64(i & 31), Cloudless: 0.7, Sky: 1})
	}
}
