package water

import (
	"math"

	"garner/internal/climate"
)

// MeanSaturationKPa returns the saturation vapour pressure of a day [kPa]: the
// mean of those at its minimum and maximum [C], which is more than that at its
// mean.
//
// Check: 15.0 and 24.5 C: 2.39 (FAO-56 example 3). Source: FAO-56 eq. 12.
func MeanSaturationKPa(tMinC, tMaxC float64) float64 {
	return (climate.SaturationKPa(tMinC) + climate.SaturationKPa(tMaxC)) / 2 // eq. 12
}

// VapourKPa returns a day's actual vapour pressure [kPa] from its mean relative
// humidity [%, 0-100] and its mean saturation pressure [kPa]. Where the humidity
// came from a dew point at the minimum (climate.HumidityFromDew; FAO-56 eq. 48),
// it is the saturation pressure at that minimum again.
//
// Check: 68 % between 18 and 25 C: 1.78 (FAO-56 example 5). Source: FAO-56 eq.
// 19.
func VapourKPa(humidityPct, meanSaturationKPa float64) float64 {
	return humidityPct / 100 * meanSaturationKPa // eq. 19
}

// VapourOfWetBulbKPa returns the actual vapour pressure [kPa] from the dry and the
// wet bulb of a psychrometer [C], the pressure of the air [kPa] and the instrument's
// coefficient [1/C], 0.000662 where it is aspirated.
//
// Check: 25.6 and 19.5 C at 87.9 kPa: 1.91 (FAO-56 example 4). Source: FAO-56 eq.
// 15 and 16.
func VapourOfWetBulbKPa(dryC, wetC, pressureKPa, coefficient float64) float64 {
	return climate.SaturationKPa(wetC) - coefficient*pressureKPa*(dryC-wetC) // eq. 15
}

// SlopeKPaC returns how fast the saturation vapour pressure rises with
// temperature at t [C] [kPa/C].
//
// Check: 30.2 C: 0.246 (FAO-56 example 17). Source: FAO-56 eq. 13.
func SlopeKPaC(t float64) float64 {
	d := t + 237.3
	return 4098 * 0.6108 * math.Exp(17.27*t/d) / (d * d) // eq. 13
}
