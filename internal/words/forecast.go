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
const leastForecast = 0.0005

// coarse rounds a weight under 1 kg to 50 g, under 100 g to 10 g and under 10 g to 1 g.
func coarse(kg float64) float64 {
	for _, s := range []struct{ under, step float64 }{{0.01, 0.001}, {0.1, 0.01}, {0.995, 0.05}} {
		if math.Abs(kg) < s.under {
			return math.Round(kg/s.step) * s.step
		}
	}
	return about(kg)
}

// Forecast writes a weight given in kg that is a mean over futures: with two figures,
// and in grams when it is under 1 kg, then no finer than a kitchen would.
func (f Formatter) Forecast(kg float64) string {
	kg = coarse(kg)
	switch size := math.Abs(kg); {
	case size < leastForecast:
		return f.unit(f.Number(0, 0), "g")
	case size < 0.9995:
		return f.unit(f.Number(kg*1000, 0), "g")
	}
	return f.unit(f.About(kg), "kg")
}
