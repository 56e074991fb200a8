package climate

import "math"

// gaussHermite holds the nodes and weights of the mean over a standard normal
// variable by nine points (Abramowitz & Stegun 1964, table 25.10, rescaled).
var gaussHermite = func() (g [9][2]float64) {
	x := [5]float64{0, 0.723551018752838, 1.468553289216668, 2.266580584531843, 3.190993201781528}
	w := [5]float64{0.7202352156060510, 0.4326515590025558, 0.08847452739437657, 0.004943624275536947, 3.960697726326439e-05}
	for i := range x {
		weight := w[i] / math.Sqrt(math.Pi)
		g[4+i] = [2]float64{x[i] * math.Sqrt2, weight}
		g[4-i] = [2]float64{-x[i] * math.Sqrt2, weight}
	}
	return g
}()

// squareNormal gives a and b such that (a + b z)^2, z standard normal, has the
// mean and standard deviation given. Such a quantity can never be negative and
// needs no clipping. The spread is held to 1.2 times the mean, below the most
// the form allows (the square root of two).
//
// Algebra: mean = a^2 + b^2, variance = 4 a^2 b^2 + 2 b^4.
func squareNormal(mean, sd float64) (a, b float64) {
	mean = math.Max(mean, 0)
	sd = math.Min(sd, 1.2*mean)
	b2 := mean - math.Sqrt(mean*mean-sd*sd/2)
	return math.Sqrt(mean - b2), math.Sqrt(b2)
}

// logistic maps the whole line to 0-1.
func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

func logit(u float64) float64 { return math.Log(u / (1 - u)) }

// logitMean returns the mean of logistic(mid + spread z), z standard normal,
// and its derivative with respect to mid.
func logitMean(mid, spread float64) (mean, slope float64) {
	for _, g := range gaussHermite {
		p := logistic(mid + spread*g[0])
		mean += g[1] * p
		slope += g[1] * p * (1 - p)
	}
	return mean, slope
}

// logitVariance returns the variance of logistic(mid + spread z).
func logitVariance(mid, spread float64) float64 {
	mean, square := 0.0, 0.0
	for _, g := range gaussHermite {
		p := logistic(mid + spread*g[0])
		mean += g[1] * p
		square += g[1] * p * p
	}
	return square - mean*mean
}

// logitMid returns the mid for which the mean of logistic(mid + spread z) is the
// one given, 0-1 (held to 0.01-0.99).
func logitMid(mean, spread float64) float64 {
	mean = math.Max(0.01, math.Min(0.99, mean))
	mid := logit(mean) * math.Sqrt(1+spread*spread*math.Pi/8)
	for range 8 {
		got, slope := logitMean(mid, spread)
		step := (mean - got) / slope
		mid += math.Max(-1, math.Min(1, step))
		if math.Abs(step) < 1e-6 {
			break
		}
	}
	return mid
}

// maxLogitSpread holds the bounded quantities to shapes with at most slight
// humps at the ends.
const maxLogitSpread = 3

// logitNormal returns mid and spread such that logistic(mid + spread z) has the
// mean and standard deviation given, both as shares of the range.
func logitNormal(mean, sd float64) (mid, spread float64) {
	low, high := 1e-3, float64(maxLogitSpread)
	for range 30 {
		spread = (low + high) / 2
		mid = logitMid(mean, spread)
		if logitVariance(mid, spread) < sd*sd {
			low = spread
		} else {
			high = spread
		}
	}
	return mid, spread
}
