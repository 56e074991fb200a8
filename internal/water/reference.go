package water

import (
	"garner/internal/climate"
	"garner/internal/sun"
)

// Air is what evapotranspiration asks of one day at the ground.
type Air struct {
	MeanC             float64 // half-way between the extremes [C]
	DeficitKPa        float64 // vapour pressure that is lacking to saturation [kPa], 0 or more
	WindMS            float64 // at 2 m [m/s], 0 or more
	AvailableMJ       float64 // net radiation less what goes into the soil [MJ/m2/day]
	PsychrometricKPaC float64 // [kPa/C]
}

// ReferenceMM returns the reference evapotranspiration of a day [mm]: what well
// watered grass 0.12 m high that covers the ground would lose. Never below 0; dew
// is not reckoned.
//
// It rises with radiation and deficit. Check: 5.72, 3.88 and 4.56 (FAO-56
// examples 17, 18 and 20). Source: FAO-56 eq. 6.
func (a *Air) ReferenceMM() float64 {
	radiation, wind := a.terms()
	return max(0, radiation+wind) // eq. 6
}

// terms are the parts of eq. 6 that radiation and dry wind drive [mm].
func (a *Air) terms() (radiation, wind float64) {
	slope := SlopeKPaC(a.MeanC)
	resistance := slope + a.PsychrometricKPaC*(1+0.34*a.WindMS)
	radiation = slope * EvaporatedMM(a.AvailableMJ) / resistance
	wind = a.PsychrometricKPaC * 900 / (a.MeanC + 273) * a.WindMS * a.DeficitKPa / resistance
	return radiation, wind
}

// Light is what reaches the ground of a bed from the sun and leaves it for the
// sky.
type Light struct {
	RadiationMJ float64 // global radiation that falls on it [MJ/m2/day]
	Cloudless   float64 // of the open sky (Cloudless), 0.3-1
	Sky         float64 // share of the open sky it looks at, 0-1
}

// Place is what evapotranspiration asks of a place whatever the day. It never
// changes.
type Place struct{ elevationM, psychrometricKPaC float64 }

// NewPlace works out a place at a height above the sea [m].
func NewPlace(elevationM float64) Place {
	return Place{elevationM, PsychrometricKPaC(PressureKPa(elevationM))}
}

// Cloudless returns how clear a day is at the place, 0.3-1, from its radiation
// above and below the air of the open sky [MJ/m2/day].
func (p Place) Cloudless(extraterrestrialMJ, radiationMJ float64) float64 {
	return Cloudless(radiationMJ, sun.ClearSkyMJ(extraterrestrialMJ, p.elevationM))
}

// Air works out a day at the ground: d is the weather there, under a cover that
// of under the cover, and l the light there. What walls and trees hide of the sky
// is taken to be as warm as the ground, so that nothing is lost to it; the soil
// takes up nothing in the mean of a day (FAO-56 eq. 42).
func (p Place) Air(d *climate.Day, l Light) Air {
	saturated := MeanSaturationKPa(d.TMinC, d.TMaxC)
	vapour := VapourKPa(d.HumidityPct, saturated)
	lost := l.Sky * NetLongMJ(d.TMinC, d.TMaxC, vapour, l.Cloudless)
	return Air{MeanC: d.MeanC(), DeficitKPa: saturated - vapour, WindMS: max(LeastWindMS, d.WindMS),
		AvailableMJ: NetShortMJ(l.RadiationMJ) - lost, PsychrometricKPaC: p.psychrometricKPaC} // eq. 40
}

// ReferenceMM returns the reference evapotranspiration of a day at the ground
// [mm], as Air and Air.ReferenceMM give it.
func (p Place) ReferenceMM(d *climate.Day, l Light) float64 {
	a := p.Air(d, l)
	return a.ReferenceMM()
}
