package num

import (
	"math"
	"sort"
)

// Quantile returns the p-quantile (0-1) of values in rising order, linear
// between ranks (Hyndman & Fan 1996, type 7). No values give NaN.
func Quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	h := p * float64(len(sorted)-1)
	i := int(math.Floor(h))
	if i >= len(sorted)-1 {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (h-float64(i))*(sorted[i+1]-sorted[i])
}

// Quantiles sorts a copy of values and returns the wanted quantiles.
func Quantiles(values []float64, ps ...float64) []float64 {
	s := append([]float64(nil), values...)
	sort.Float64s(s)
	out := make([]float64, len(ps))
	for i, p := range ps {
		out[i] = Quantile(s, p)
	}
	return out
}

// Mean returns the arithmetic mean; no values give NaN.
func Mean(values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}

// StandardDeviation returns the sample standard deviation (n-1); fewer than two
// values give 0.
func StandardDeviation(values []float64) float64 {
	if len(values) < 2 {
		return 0
	}
	m, ss := Mean(values), 0.0
	for _, v := range values {
		ss += (v - m) * (v - m)
	}
	return math.Sqrt(ss / float64(len(values)-1))
}

// Clamp returns x held between low and high.
func Clamp(x, low, high float64) float64 {
	if x < low {
		return low
	}
	if x > high {
		return high
	}
	return x
}
