package season

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/water"
)

// AtGround is what the air of a day asks and gives at a bed's ground, under its
// cover and in its light.
type AtGround struct {
	ReferenceMM float64 // reference evapotranspiration
	RainMM      float64 // that comes through the cover
	WindMS      float64
	LeastPct    float64 // least relative humidity of the day
}

// AtGround works out the days of a bed's ground from index `from` of the sky up to
// `to`, in the given space. days is the open weather from the sky's first day on.
func (g *Ground) AtGround(sky *Sky, days []climate.Day, from, to int, space []AtGround) ([]AtGround, error) {
	layers, err := lookupLayers(g.Spells)
	if err != nil {
		return nil, err
	}
	place := water.NewPlace(sky.Location.ElevationM)
	out := resize(space, to-from)
	for i := from; i < to; i++ {
		under := days[i]
		mm := g.referenceOn(sky, days, i, place, layers, &under)
		vapour := water.VapourKPa(under.HumidityPct, water.MeanSaturationKPa(under.TMinC, under.TMaxC))
		out[i-from] = AtGround{ReferenceMM: mm, RainMM: under.RainMM, WindMS: under.WindMS,
			LeastPct: min(100, 100*vapour/climate.SaturationKPa(under.TMaxC))}
	}
	return out, nil
}

// referenceOn works out a day's reference evapotranspiration at the ground and puts
// the weather under the cover into under.
func (g *Ground) referenceOn(sky *Sky, days []climate.Day, i int, place water.Place, layers layers, under *climate.Day) float64 {
	seen := g.skyOn(sky, i)
	if c := layers.on(sky.First + cal.Date(i)); c != nil {
		*under = c.Under(days[i], sky.ExtraterrestrialMJ[i])
		seen *= c.SkyShare()
	}
	return place.ReferenceMM(under, water.Light{
		RadiationMJ: under.RadiationMJ * g.LightOn(sky, i, days[i].RadiationMJ),
		Cloudless:   place.Cloudless(sky.ExtraterrestrialMJ[i], days[i].RadiationMJ),
		Sky:         seen})
}
