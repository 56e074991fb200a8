package climate

import "math"

// rainTable gives a wet day's rain from one uniform draw: the quantiles of a
// gamma distribution of unit mean, held against y = -ln(1-u), in which they
// are nearly straight. Drawing by quantile uses one number a day, so that no
// day's rain can shift the numbers of the days after.
type rainTable struct {
	shape    float64
	quantile [rainSteps + 1]float64
}

const (
	rainSteps = 320
	rainTop   = 16.0 // -ln(1-u) of the last step: one wet day in nine million
)

func newRainTable(shape float64) *rainTable {
	t := &rainTable{shape: shape}
	x, y := 0.0, 0.0 // a gamma value and its -ln(1-u), both at the finer steps of the search
	for i := 1; i <= rainSteps; i++ {
		want := rainTop * float64(i) / rainSteps
		step := math.Max(x, 1e-4) / 16
		for {
			nextY := -math.Log(gammaUpper(shape, x+step))
			if nextY >= want {
				t.quantile[i] = x + step*(want-y)/(nextY-y)
				break
			}
			x, y = x+step, nextY
			step = math.Max(x, 1e-4) / 16
		}
	}
	t.scaleToUnitMean()
	return t
}

// scaleToUnitMean takes out the little that the straight lines add. The mean
// over u is that over y with weight exp(-y).
func (t *rainTable) scaleToUnitMean() {
	h, mean := rainTop/rainSteps, 0.0
	for i := range rainSteps {
		y0 := h * float64(i)
		w0, w1 := math.Exp(-y0), math.Exp(-y0-h)
		slope := (t.quantile[i+1] - t.quantile[i]) / h
		// Integral of (q + slope (y-y0)) exp(-y) over the step.
		mean += t.quantile[i]*(w0-w1) + slope*(w0-w1*(1+h))
	}
	mean += t.quantile[rainSteps] * math.Exp(-rainTop)
	for i := range t.quantile {
		t.quantile[i] /= mean
	}
}

// at returns the rain of unit mean at u in [0,1).
func (t *rainTable) at(u float64) float64 {
	p := -math.Log(1-u) * (rainSteps / rainTop)
	i := int(p)
	if i >= rainSteps {
		return t.quantile[rainSteps]
	}
	return t.quantile[i] + (p-float64(i))*(t.quantile[i+1]-t.quantile[i])
}

// gammaUpper returns the share of a gamma distribution of the given shape and
// unit scale above x >= 0.
//
// Source: Abramowitz & Stegun 1964, eq. 6.5.29 (series) and 6.5.31 (continued
// fraction).
func gammaUpper(shape, x float64) float64 {
	if x <= 0 {
		return 1
	}
	lg, _ := math.Lgamma(shape)
	front := math.Exp(-x + shape*math.Log(x) - lg)
	if x < shape+1 {
		term, sum := 1/shape, 1/shape
		for n := 1.0; term > 1e-14*sum; n++ {
			term *= x / (shape + n)
			sum += term
		}
		return 1 - front*sum // eq. 6.5.29
	}
	b := x + 1 - shape
	c, d := math.Inf(1), 1/b
	h := d
	for n := 1.0; n < 300; n++ {
		a := -n * (n - shape)
		b += 2
		d = 1 / (a*d + b)
		c = b + a/c
		h *= c * d
		if math.Abs(c*d-1) < 1e-13 {
			break
		}
	}
	return front * h // eq. 6.5.31
}
