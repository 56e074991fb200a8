package larder

import (
	"math"

	"garner/internal/crop"
)

// Humidity is how damp the air of a store is.
type Humidity string

// The classes of humidity; blank is as the way of keeping wants it.
const (
	HumidityAsMethod Humidity = ""
	Dry              Humidity = "dry"      // an airy loft or a heated room
	Ordinary         Humidity = "ordinary" // a shed or an unheated room
	Damp             Humidity = "damp"     // an earth cellar, or packed in damp sand
)

// air is the relative humidity of a class, 0-1. Judgement: the middle of what is
// measured in heated rooms, in sheds over the winter and in earth cellars.
var air = map[Humidity]float64{Dry: 0.6, Ordinary: 0.75, Damp: 0.93}

const (
	humidityTolerance = 0.1 // that much beside what is wanted does no harm, 0-1
	humidityDoubling  = 0.2 // each so much more doubles the small losses, 0-1
)

// LossFactor is by how much a store's humidity multiplies the small losses of
// what is kept there (>= 1): in air too dry it wilts, in air too damp it rots or
// roots. A store of no told class is as the way of keeping wants it. Judgement:
// USDA Agriculture Handbook 66 prints the humidity each crop wants, but no
// losses beside it.
func (h Humidity) LossFactor(s crop.Storage) float64 {
	is, told := air[h]
	if !told || s.Humidity <= 0 {
		return 1
	}
	beside := math.Abs(is-s.Humidity) - humidityTolerance
	return math.Exp2(math.Max(0, beside) / humidityDoubling)
}
