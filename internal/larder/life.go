package larder

import (
	"math"

	"garner/internal/crop"
)

// ChillHalvingC is how far below its floor a chilling-sensitive crop loses half
// its life [C].
//
// Fitted by least squares through the origin on the logarithm of life at 5 C
// over life at best, for the eight crops marked chilled in
// testdata/life_by_temperature.csv (postharvest.net.au summary table). Their
// floor is the low end of the best range; the pumpkin's, for which one
// temperature is printed, is that of USDA Agriculture Handbook 66 (1954). Single
// crops lie between 2.4 and 9 C: it is a band, not a constant of nature.
const ChillHalvingC = 4.2

// LifeDays returns how long a lot keeps at a steady temperature [d].
//
// s is one way of keeping a crop; temperatureC is the store's temperature [C],
// valid from -40 to 50. Between FloorC and BestC the life is LifeDays: it is a
// published upper bound and is never lengthened. Above BestC it is divided by
// Q10 for each 10 C; a Q10 of 1 means that dormancy decides and warmth does not
// (onion, garlic, potato respire almost alike at all store temperatures). Below
// FloorC chilling halves it for each ChillHalvingC.
//
// Source: van 't Hoff's rule as used for storage life by Saltveit in USDA
// Agriculture Handbook 66, 2002 draft (life taken as inverse to the rate of
// respiration; Q10 2.5-4 between 0 and 10 C, 2-2.5 to 20 C, 1.5-2 to 30 C).
func LifeDays(s crop.Storage, temperatureC float64) float64 {
	switch {
	case temperatureC > s.BestC:
		return s.LifeDays * math.Pow(s.Q10, -(temperatureC-s.BestC)/10)
	case temperatureC < s.FloorC:
		return s.LifeDays * math.Exp2(-(s.FloorC-temperatureC)/ChillHalvingC)
	}
	return s.LifeDays
}

// keeps tells whether a row of the book can be reckoned with.
func keeps(s crop.Storage) bool {
	return s.LifeDays > 0 && s.Q10 > 0 && !math.IsInf(s.LifeDays+s.Q10, 0) &&
		s.LossShare >= 0 && s.LossShare < 1 && s.LossMonth >= 0 && s.LossMonth < 1
}
