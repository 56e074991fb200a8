package growth

import (
	"math"

	"garner/internal/num"
)

func newLightCurve() num.Curve { return num.NewCurve(0, 45, 0.05, LightFactor) }

// interceptionCurve gives the share of light caught by a canopy as a function of
// extinction coefficient times leaf area index (Beer-Lambert; Monsi & Saeki
// 1953).
var interceptionCurve = num.NewCurve(0, 10, 0.01, func(x float64) float64 { return 1 - math.Exp(-x) })

// Intercepted returns the share of the light that a canopy catches.
func Intercepted(extinction, leafAreaIndex float64) float64 {
	return interceptionCurve.At(extinction * leafAreaIndex)
}
