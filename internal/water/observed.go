package water

import (
	"math"

	"garner/internal/climate"
	"garner/internal/sun"
)

// Formula is how a day's reference evapotranspiration was worked out.
type Formula string

// The formulas.
const (
	PenmanMonteith Formula = "penman-monteith" // FAO-56 eq. 6
	Hargreaves     Formula = "hargreaves"      // FAO-56 eq. 52
)

// HargreavesMM returns the reference evapotranspiration of a day [mm] from its
// extremes [C] and the radiation above the air [MJ/m2/day], for places where
// nothing else is measured. Never below 0.
//
// Check: 14.8 to 26.6 C, 40.55 MJ: 5.0 (FAO-56 example 20). Source: FAO-56 eq. 52.
func HargreavesMM(tMinC, tMaxC, extraterrestrialMJ float64) float64 {
	mean := (tMinC + tMaxC) / 2
	return max(0, 0.0023*(mean+17.8)*math.Sqrt(max(0, tMaxC-tMinC))*EvaporatedMM(extraterrestrialMJ)) // eq. 52
}

// EvaporatedMM returns the depth of water [mm] that a radiation [MJ/m2] turns to
// vapour. Check: 32.2: 13.1 (FAO-56 example 8). Source: FAO-56 eq. 20.
func EvaporatedMM(radiationMJ float64) float64 { return 0.408 * radiationMJ } // eq. 20

// Observed returns the reference evapotranspiration [mm] of a day in the open as
// a station recorded it, and by which formula: Penman-Monteith with what is
// missing made up (climate.Estimated), Hargreaves where only temperatures were
// recorded. False where a temperature is missing. The place is that of at.
func (p Place) Observed(o *climate.Observation, at sun.Location) (mm float64, by Formula, ok bool) {
	d, ok := climate.Estimated(o, at)
	if !ok {
		return 0, "", false
	}
	above := sun.ExtraterrestrialMJ(at.LatitudeDeg, o.Date.DayOfYear())
	if o.OnlyTemperatures() {
		return HargreavesMM(d.TMinC, d.TMaxC, above), Hargreaves, true
	}
	return p.ReferenceMM(&d, Light{RadiationMJ: d.RadiationMJ, Cloudless: p.Cloudless(above, d.RadiationMJ), Sky: 1}),
		PenmanMonteith, true
}
