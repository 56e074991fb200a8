package growth

import (
	"math"

	"garner/internal/climate"
	"garner/internal/sun"
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

// chebyshev is cos(30 degrees): where on the half range the outer two points of
// the day's quadrature lie.
const chebyshev = 0.8660254037844386

var lightCurve = newLightCurve()

// NewAir works out a day at the bed.
//
// under is the day's weather under the cover and meanC its mean over 24 hours,
// which under a cover lies below the middle of the extremes; light is the share
// of the light that shade leaves (0-1); soilC the soil temperature [C];
// dayLengthH the day length [h].
//
// The response is read at three points of a sine about the mean that reaches the
// night's minimum; the short peak of a covered noon counts in the mean only.
func NewAir(under climate.Day, meanC, light, soilC, dayLengthH float64) Air {
	half := meanC - under.TMinC
	radiation := under.RadiationMJ * light
	return Air{
		points: [3]point{
			latticePoint(meanC - chebyshev*half), latticePoint(meanC), latticePoint(meanC + chebyshev*half)},
		TMinC: under.TMinC, MeanC: meanC, SoilC: soilC,
		PARMJ: sun.PARShare * radiation, Light: lightCurve.At(radiation), DayLengthH: dayLengthH,
	}
}

// LightFactor returns how far the light of a day lets a crop develop: near 0 in
// the dark, 1 at 14.4 MJ/m2 of global radiation, 1.1 at most.
//
// judgement: form and constants of the window trial (1.1 (1 - exp(-R/6))); the
// level at which winter growth stands still agrees with the growers' ten-hour
// rule (common practice, no source).
func LightFactor(radiationMJ float64) float64 { return 1.1 * (1 - math.Exp(-radiationMJ/6)) }
