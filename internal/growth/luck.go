package growth

import "math"

// logNormal turns a standard normal draw into a factor of mean 1 and the given
// coefficient of variation.
func logNormal(z, variation float64) float64 {
	if variation <= 0 {
		return 1
	}
	s2 := math.Log(1 + variation*variation)
	return math.Exp(math.Sqrt(s2)*z - s2/2)
}

// lossDraw turns a uniform draw into a share lost whose mean is the given one:
// most years little, some years much (a power of the uniform draw: the mean of
// u^n is 1/(n+1)). A mean loss of 0.2 gives over half in one year of six.
func lossDraw(mean, u float64) float64 {
	if mean <= 0 {
		return 0
	}
	return math.Pow(u, 1/mean-1)
}
