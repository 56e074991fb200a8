package num

import "math"

// Curve is a function of one variable held as a table of equal steps and read
// by straight lines between them: the response functions of the day loop.
type Curve struct {
	low, perStep float64
	last         float64
	values       []float64
}

// NewCurve tabulates f from low to high (> low) in steps of at most step.
// Outside the range At returns the value at the nearer end.
func NewCurve(low, high, step float64, f func(float64) float64) Curve {
	n := int(math.Ceil((high - low) / step))
	width := (high - low) / float64(n)
	values := make([]float64, n+2)
	for i := range values {
		values[i] = f(low + math.Min(float64(i), float64(n))*width)
	}
	return Curve{low: low, perStep: 1 / width, last: float64(n), values: values}
}

// At returns the function at x.
func (c *Curve) At(x float64) float64 {
	p := (x - c.low) * c.perStep
	if p <= 0 {
		return c.values[0]
	}
	if p >= c.last {
		return c.values[len(c.values)-1]
	}
	i := int(p)
	v := c.values[i]
	return v + (p-float64(i))*(c.values[i+1]-v)
}
