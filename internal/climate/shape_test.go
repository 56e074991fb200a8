package climate

import (
	"math"
	"testing"
)

func TestSquareNormalKeepsItsMoments(t *testing.T) {
	for _, c := range [][2]float64{{5, 2}, {10, 3}, {2, 1.8}} {
		a, b := squareNormal(c[0], c[1])
		mean := a*a + b*b
		sd := math.Sqrt(4*a*a*b*b + 2*b*b*b*b)
		if math.Abs(mean-c[0]) > 1e-9 || math.Abs(sd-c[1]) > 1e-9 {
			t.Errorf("%v gives %v, %v", c, mean, sd)
		}
	}
}

func TestLogitNormalKeepsItsMoments(t *testing.T) {
	for _, c := range [][2]float64{{0.5, 0.2}, {0.85, 0.08}, {0.3, 0.18}} {
		mid, spread := logitNormal(c[0], c[1])
		mean, _ := logitMean(mid, spread)
		if math.Abs(mean-c[0]) > 1e-4 || math.Abs(math.Sqrt(logitVariance(mid, spread))-c[1]) > 1e-3 {
			t.Errorf("%v gives %v, %v", c, mean, math.Sqrt(logitVariance(mid, spread)))
		}
	}
}

func TestBendIsUndoneAndStandard(t *testing.T) {
	for _, b := range []bend{newBend(0, 0), newBend(0.1, 0.1), newBend(0.25, 0.02)} {
		for z := -3.0; z <= 3; z += 0.25 {
			if got := b.inverse(b.at(z)); math.Abs(got-z) > 1e-9 {
				t.Errorf("%+v: %v came back as %v", b, z, got)
			}
		}
	}
}

// Quantiles of the gamma distribution with mean 1 (shape 1 is the exponential:
// closed form; shape 0.5 is half a squared normal: chi-squared tables, 95 % at
// 3.841, 99 % at 6.635).
func TestRainTable(t *testing.T) {
	one, half := newRainTable(1), newRainTable(0.5)
	for _, c := range []struct {
		table   *rainTable
		u, want float64
	}{
		{one, 0.5, math.Ln2}, {one, 0.99, -math.Log(0.01)},
		{half, 0.95, 3.841}, {half, 0.99, 6.635},
	} {
		if got := c.table.at(c.u); math.Abs(got/c.want-1) > 0.003 {
			t.Errorf("shape %v at %v: %v, want %v", c.table.shape, c.u, got, c.want)
		}
	}
	if g := gammaUpper(2.5, 3); math.Abs(g-0.3061) > 1e-3 { // incomplete gamma, Abramowitz & Stegun table 26.7: chi-squared 6, 5 degrees
		t.Errorf("%v", g)
	}
}

// The matrices of WGEN: A and B as seen in the SWAT+ source cli_weatgn, from the
// correlations of Richardson & Wright 1984 (M0 and M1 from memory), order tmax,
// tmin, radiation. All are printed to three decimals.
func TestAutoregressionGivesThePublishedMatrices(t *testing.T) {
	m0 := within(1, 0.633, 0.186, 0.633, 1, -0.193, 0.186, -0.193, 1)
	m1 := within(0.621, 0.445, 0.087, 0.563, 0.674, -0.1, 0.015, -0.091, 0.251)
	m0[3][3], m0[4][4] = 1, 1
	a, b := autoregression(m0, m1)
	wantA := within(0.567, 0.086, -0.002, 0.253, 0.504, -0.05, -0.006, -0.039, 0.244)
	wantB := within(0.781, 0, 0, 0.328, 0.637, 0, 0.238, -0.341, 0.873)
	for i := range 3 {
		for j := range 3 {
			if math.Abs(a[i][j]-wantA[i][j]) > 0.0025 || math.Abs(b[i][j]-wantB[i][j]) > 0.0015 {
				t.Errorf("%d,%d: A %.3f want %.3f, B %.3f want %.3f", i, j, a[i][j], wantA[i][j], b[i][j], wantB[i][j])
			}
		}
	}
}

// within sets the corner of a matrix, row by row.
func within(v ...float64) (m matrix) {
	for i := range v {
		m[i/3][i%3] = v[i]
	}
	return m
}

// A fitted generator has to forget: no correlations, however patchy the record,
// may make the departures grow.
func TestRecursionsForget(t *testing.T) {
	for _, s := range []station{deBilt, valentia} {
		g := must(t, func() (*Generator, error) { return FitGenerator(s.record(t), s.location) })
		for i, r := range g.ar {
			power := r.a
			for range 7 { // the 128th power
				power = power.times(&power)
			}
			for _, row := range power {
				for _, v := range row {
					if math.Abs(v) > 1e-3 {
						t.Errorf("%s month %d does not forget: %v", s.id, i+1, v)
					}
				}
			}
		}
	}
}
