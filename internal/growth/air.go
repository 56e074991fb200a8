package growth

import (
	"math"

	"garner/internal/climate"
)

// Air is one day as the plants of a bed feel it, under their cover and in
// their shade, with what all crops share worked out once.
type Air struct {
	points     [3]point
	TMinC      float64
	MeanC      float64
	SoilC      float64 // at sowing depth
	PARMJ      float64 // photosynthetically active radiation at the top of the canopy [MJ/m2]
	Light      float64 // light factor of development, 0-1.1
	DayLengthH float64
}

// parShare is the share of global radiation that plants can use.
// Source: Monteith & Unsworth, Principles of Environmental Physics (0.50; from
// memory); McCree 1972 for the waveband.
const parShare = 0.5

// chebyshev is cos(30 degrees): where on the half range the outer two points of
// the day's quadrature lie.
const chebyshev = 0.8660254037844386

var lightCurve = newLightCurve()

// NewAir works out a day at the bed.
//
// under is the day's weather under the cover; light the share of it that shade
// leaves (0-1); soilC the soil temperature [C]; dayLengthH the day length [h].
func NewAir(under climate.Day, light, soilC, dayLengthH float64) Air {
	mean, half := under.MeanC(), (under.TMaxC-under.TMinC)/2
	radiation := under.RadiationMJ * light
	return Air{
		points: [3]point{
			latticePoint(mean - chebyshev*half), latticePoint(mean), latticePoint(mean + chebyshev*half)},
		TMinC: under.TMinC, MeanC: mean, SoilC: soilC,
		PARMJ: parShare * radiation, Light: lightCurve.At(radiation), DayLengthH: dayLengthH,
	}
}

// LightFactor returns how far the light of a day lets a crop develop: near 0 in
// the dark, 1 at 14.4 MJ/m2 of global radiation, 1.1 at most.
//
// judgement: form and constants of the window trial (1.1 (1 - exp(-R/6))); the
// level at which winter growth stands still agrees with the growers' ten-hour
// rule (common practice, no source).
func LightFactor(radiationMJ float64) float64 { return 1.1 * (1 - math.Exp(-radiationMJ/6)) }
