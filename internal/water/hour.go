package water

import "garner/internal/climate"

// Hour is the weather of one hour in the open.
type Hour struct {
	MeanC       float64 // of the air
	HumidityPct float64 // relative, 0-100
	WindMS      float64 // at 2 m
	RadiationMJ float64 // global [MJ/m2/h]
	Cloudless   float64 // radiation as a share of a clear sky's; by night that before sunset
}

// HourAir works out an hour at the place as Air does a day. The black body of
// NetLongMJ gives a twenty-fourth of its day.
//
// Check: 38 C, 52 %, 2.45 MJ: 1.749 MJ, less 0.175 into the soil (FAO-56 example 19).
// Source: FAO-56 eq. 38 to 40, 45, 46 and 54.
func (p Place) HourAir(h *Hour) Air {
	saturated := climate.SaturationKPa(h.MeanC)
	vapour := VapourKPa(h.HumidityPct, saturated) // eq. 54
	net := NetShortMJ(h.RadiationMJ) - NetLongMJ(h.MeanC, h.MeanC, vapour, h.Cloudless)/24
	return Air{MeanC: h.MeanC, DeficitKPa: saturated - vapour, WindMS: h.WindMS,
		AvailableMJ: net - HourSoilMJ(net), PsychrometricKPaC: p.psychrometricKPaC}
}

// HourReferenceMM returns the reference evapotranspiration of an hour [mm], never
// below 0.
//
// Check: 0.63 and 0.00 (FAO-56 example 19). Source: FAO-56 eq. 53.
func (a *Air) HourReferenceMM() float64 {
	radiation, wind := a.hourTerms()
	return max(0, radiation+wind)
}

// hourTerms are the parts of eq. 53 that radiation and dry wind drive [mm]: those of
// a day with a wind that counts for a twenty-fourth of it.
func (a *Air) hourTerms() (radiation, wind float64) {
	radiation, wind = a.terms()
	return radiation, wind * 37 / 900 // eq. 53
}
