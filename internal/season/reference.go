package season

import (
	"garner/internal/climate"
	"garner/internal/water"
)

// Reference works out what the air asks of a bed's ground on the days from index
// `from` of the sky up to `to`: reference evapotranspiration [mm] under the bed's
// cover and in its light, one figure a day in the given space. days is the open
// weather for the sky's whole span.
func (g *Ground) Reference(sky *Sky, days []climate.Day, from, to int, space []float64) ([]float64, error) {
	layers, err := lookupLayers(g.Spells)
	if err != nil {
		return nil, err
	}
	place := water.NewPlace(sky.Location.ElevationM)
	out := resize(space, to-from)
	for i := from; i < to; i++ {
		under := days[i]
		out[i-from] = g.referenceOn(sky, days, i, place, layers, &under)
	}
	return out, nil
}

// skyOn is the share of the open sky that the bed looks at on a day, 0-1: the
// share of the light of an even sky that is left.
func (g *Ground) skyOn(sky *Sky, day int) float64 {
	if g.Shade == nil {
		return g.Light
	}
	return g.Light * g.Shade.Diffuse[sky.dayOfYear[day]]
}
