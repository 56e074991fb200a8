package watering

import (
	"garner/internal/place"
	"garner/internal/water"
)

// ground is what the balance of a bed is reckoned with.
type ground struct {
	soil  *water.Soil
	depth float64 // that roots may reach at most [m]; 0: as they will
}

// The depth of what holds its own soil [m]. judgement: a pot or tub is about as deep
// as it is wide, and a tray on a bench 8 cm.
const (
	leastPotM = 0.15
	mostPotM  = 0.45
	trayM     = 0.08
)

// groundOf tells the soil of a bed: of containers potting mix unless told otherwise,
// with no more depth than they have and no water from below.
func groundOf(b *place.Bed) (g ground, err error) {
	switch b.Kind {
	case "container":
		g.depth = max(leastPotM, min(mostPotM, b.LengthM, b.WidthM))
	case "bench":
		g.depth = trayM
	}
	g.soil, err = water.SoilOf(water.TextureOf(b.Texture, b.OwnSoil()))
	return g, err
}
