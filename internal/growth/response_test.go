package growth

import (
	"math"
	"testing"

	"garner/internal/climate"
	"garner/internal/crop"
)

// The table must stay within 1e-4 of the published formula for every use of the
// book, at every two-hundredth of a degree.
func TestResponseTableFollowsTheFormula(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			r := NewResponse(u.BaseC, u.OptimumC, u.CeilingC)
			for i := -3000; i <= 11000; i++ {
				x := float64(i) / 200
				want := WangEngel(x, u.BaseC, u.OptimumC, u.CeilingC)
				if got := r.At(x); math.Abs(got-want) > 1e-4 {
					t.Fatalf("%s %s at %.2f C: table %.6f, formula %.6f", u.Crop, u.Name, x, got, want)
				}
			}
		}
	}
}

// The formula's own landmarks: 0 at base and ceiling, 1 at the optimum, one
// crest between (Wang & Engel 1998 state these as its properties).
func TestWangEngelLandmarks(t *testing.T) {
	for _, c := range [][3]float64{{0, 24, 35}, {4, 18, 28}, {10, 30, 42}, {-2, 12, 30}} {
		base, best, ceiling := c[0], c[1], c[2]
		if WangEngel(base, base, best, ceiling) != 0 || WangEngel(ceiling, base, best, ceiling) != 0 {
			t.Errorf("%v: not zero at its ends", c)
		}
		if got := WangEngel(best, base, best, ceiling); math.Abs(got-1) > 1e-12 {
			t.Errorf("%v: %g at the optimum, want 1", c, got)
		}
		before := 0.0
		for x := base; x <= best; x += 0.1 {
			v := WangEngel(x, base, best, ceiling)
			if v < before-1e-12 {
				t.Fatalf("%v falls before its optimum at %.1f", c, x)
			}
			before = v
		}
	}
}

// Three points of a sine day against its integral by a thousand steps.
func TestOverDayAgreesWithIntegral(t *testing.T) {
	r := NewResponse(3, 20, 35)
	for _, day := range []climate.Day{{TMinC: 8, TMaxC: 18}, {TMinC: -2, TMaxC: 9}, {TMinC: 15, TMaxC: 31}} {
		a := NewAir(day, day.MeanC(), 1, 10, 12)
		sum := 0.0
		for i := range 1000 {
			angle := 2 * math.Pi * (float64(i) + 0.5) / 1000
			sum += r.At(day.MeanC() + (day.TMaxC-day.TMinC)/2*math.Sin(angle))
		}
		if got, want := r.OverDay(&a), sum/1000; math.Abs(got-want) > 0.02 {
			t.Errorf("%v: three points %.4f, integral %.4f", day, got, want)
		}
	}
}

func TestInterceptedIsBeerLambert(t *testing.T) {
	for _, x := range []float64{0, 0.01, 0.3, 1, 2.5, 6} {
		if got, want := Intercepted(0.6, x), 1-math.Exp(-0.6*x); math.Abs(got-want) > 1e-4 {
			t.Errorf("LAI %g: %g, want %g", x, got, want)
		}
	}
}
