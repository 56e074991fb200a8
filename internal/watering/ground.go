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
	g.depth, _ = DepthM(b)
	g.soil, err = water.SoilOf(water.TextureOf(b.Texture, g.depth > 0))
	return g, err
}

// DepthM is how deep the soil is that a container or a bench holds [m], and whether that
// is a guess; 0: a bed, in which roots go as deep as they will.
func DepthM(b *place.Bed) (depthM float64, guessed bool) {
	held := b.Kind == "container" || b.Kind == "bench"
	switch area := b.AreaM2(); {
	case !held:
		return 0, false
	case b.VolumeL > 0 && area > 0:
		return b.VolumeL / 1000 / area, false
	case b.Kind == "bench":
		return trayM, true
	}
	return max(leastPotM, min(mostPotM, b.LengthM, b.WidthM)), true
}
