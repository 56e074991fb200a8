package words

import "math"

// About writes a number that is a mean over futures with two figures, as finely
// as such a number is known.
func (f Formatter) About(x float64) string {
	x = about(x)
	switch size := math.Abs(x); {
	case size < leastAbout:
		return f.Number(0, 0)
	case size < 1:
		return f.Number(x, 2)
	case size < 10:
		return f.Number(x, 1)
	}
	return f.Number(x, 0)
}

// leastAbout is the least number that About tells from none.
const leastAbout = 0.005

// about rounds a number to two figures.
func about(x float64) float64 {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-1)
	return math.Round(x/step) * step
}

// leastForecast is the least weight that Forecast tells from none [kg].
const leastForecast = 0.00005

// Forecast writes a weight given in kg that is a mean over futures, in grams when
// it is under 1 kg, with two figures at most.
func (f Formatter) Forecast(kg float64) string {
	kg = about(kg)
	switch size := math.Abs(kg); {
	case size < leastForecast:
		return f.unit(f.Number(0, 0), "g")
	case size < 0.9995:
		return f.Grams(kg * 1000)
	}
	return f.unit(f.About(kg), "kg")
}
