package climate

import (
	"math"
	"sort"
	"sync"

	"garner/internal/num"
)

// bend turns a standard normal quantity into one of mean 0 and variance 1 whose
// ends are drawn in: real weather has fewer extremes than a normal distribution
// of the same spread, and often not the same on the cold side as on the warm.
//
//	v = (z / sqrt(1 + t z^2) - middle) scale, t = low for z < 0, else high
//
// With both 0 nothing is bent. The form is ours: odd about zero but for the two
// strengths, rising everywhere, cheap, and bounded by nothing at strength 0.
type bend struct {
	low, high     float64
	middle, scale float64
}

// bendSteps is the number of equal steps by which the moments are summed.
const bendSteps = 240

func newBend(low, high float64) bend {
	b := bend{low: low, high: high, scale: 1}
	var mass, sum, square float64
	for i := 0; i <= bendSteps; i++ {
		z := 12*float64(i)/bendSteps - 6
		p := math.Exp(-z * z / 2)
		v := b.at(z)
		mass, sum, square = mass+p, sum+p*v, square+p*v*v
	}
	b.middle = sum / mass
	b.scale = 1 / math.Sqrt(square/mass-b.middle*b.middle)
	return b
}

func (b *bend) at(z float64) float64 {
	t := b.high
	if z < 0 {
		t = b.low
	}
	return (z/math.Sqrt(1+t*z*z) - b.middle) * b.scale
}

// farthest is as many spreads as a departure found in a record may lie from
// nothing: what lies beyond what the bend can reach is put here.
const farthest = 4

// inverse returns the normal departure behind v.
func (b *bend) inverse(v float64) float64 {
	h := v/b.scale + b.middle
	t := b.high
	if h < 0 {
		t = b.low
	}
	rest := 1 - t*h*h
	if rest <= 1e-3 {
		return math.Copysign(farthest, h)
	}
	return num.Clamp(h/math.Sqrt(rest), -farthest, farthest)
}

// bendStrengths are the strengths that are tried when a bend is fitted.
var bendStrengths = []float64{0, 0.02, 0.04, 0.07, 0.1, 0.14, 0.19, 0.25, 0.33, 0.45}

// bendAt are the normal quantiles at which a bend is held against a record:
// 0.01, 0.03, 0.1, 0.25, 0.5 and their mirror images.
var bendAt = []struct{ p, z float64 }{
	{0.01, -2.3263}, {0.03, -1.8808}, {0.1, -1.2816}, {0.25, -0.6745}, {0.5, 0},
	{0.75, 0.6745}, {0.9, 1.2816}, {0.97, 1.8808}, {0.99, 2.3263},
}

// leastForBend is how many values tell the shape of the ends.
const leastForBend = 150

// fitBend returns the bend whose quantiles are nearest to those of the values,
// which may have any mean and spread; none where the values are few. It sorts
// the values.
func fitBend(values []float64) bend {
	if len(values) < leastForBend {
		return newBend(0, 0)
	}
	sort.Float64s(values)
	mean, sd := num.Mean(values), num.StandardDeviation(values)
	best, least := newBend(0, 0), math.Inf(1)
	seen := make([]float64, len(bendAt))
	for i, q := range bendAt {
		seen[i] = (num.Quantile(values, q.p) - mean) / sd
	}
	for _, b := range allBends() {
		miss := 0.0
		for i, q := range bendAt {
			miss += math.Pow(seen[i]-b.at(q.z), 2)
		}
		if miss < least {
			best, least = b, miss
		}
	}
	return best
}

var allBends = sync.OnceValue(func() (out []bend) {
	for _, low := range bendStrengths {
		for _, high := range bendStrengths {
			out = append(out, newBend(low, high))
		}
	}
	return out
})
