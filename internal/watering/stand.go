package watering

import (
	"math"

	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/water"
)

// canopy is all that grows on a tract, seen as one stand. It keeps the roots, which
// do not shrink.
type canopy struct {
	easy  []float64 // by planting
	sown  []bool    // where it grows, and not through so far
	roots []float64 // depth reached so far [m], by planting
	depth float64   // that roots may reach; 0: as they will [m]
}

// leastRootM is how deep the roots of a plug or a seedling reach [m]. judgement.
const leastRootM = 0.15

func newCanopy(t *outlook.Tract, g ground) (canopy, error) {
	c := canopy{depth: g.depth, roots: make([]float64, len(t.Growing))}
	for i := range t.Growing {
		easy, err := water.EasyOf(t.Growing[i].Use.Crop)
		if err != nil {
			return c, err
		}
		c.easy = append(c.easy, easy)
		p := &t.Growing[i].Planting
		c.sown = append(c.sown, isSown(p, t.Growing[i].Use))
	}
	return c, nil
}

// isSown tells whether a planting is sown where it grows; a blank method is its
// commonest.
func isSown(p *plan.Planting, u *crop.Use) bool {
	method := p.Method
	if method == "" && len(u.Methods) > 0 {
		method = plan.Method(u.Methods[0])
	}
	return method == plan.Seed && p.YearsOld == 0
}

// on is the stand of a day of a tract, and the ground it has [m2]. Plantings that
// share the ground count by the light that they catch; those under or between others
// have no ground of their own. Seed counts while nothing on the ground has leaves.
func (c *canopy) on(t *outlook.Tract, day int, air *season.AtGround) (on water.Stand, areaM2 float64) {
	caught, full := 0.0, 0.0
	for i := range t.Growing {
		p := &t.Growing[i]
		d := &p.Days[day]
		if !d.There {
			continue
		}
		if !hosted(t, p, day) {
			areaM2 += d.AreaM2
		}
		c.root(i, p, d)
		c.sown[i] = c.sown[i] && d.Full <= 0
		on.Seed = on.Seed || c.sown[i]
		share := d.AreaM2 * d.Caught
		if share <= 0 {
			continue
		}
		caught += share
		full += share * water.AdjustedForClimate(p.Use.CropCoefficient, air.LeastPct, air.WindMS, d.HeightM)
		on.HeightM += share * d.HeightM
		on.RootM += share * c.roots[i]
		on.Easy += share * c.easy[i]
	}
	if caught <= 0 || areaM2 <= 0 {
		return water.Stand{RootM: c.depth, Seed: on.Seed}, areaM2
	}
	on.HeightM /= caught
	on.RootM /= caught
	on.Easy /= caught
	on.Cover = min(1, caught/areaM2)
	on.Basal = water.LeastCoefficient + max(0, full/caught-water.LeastCoefficient)*water.Density(on.Cover, on.HeightM)
	return on, areaM2
}

// hosted tells whether a planting stands on the ground of one that is there.
func hosted(t *outlook.Tract, p *outlook.Growing, day int) bool {
	return p.Host >= 0 && p.Host < len(t.Growing) && t.Growing[p.Host].Days[day].There
}

// root deepens the roots of a planting with its leaves.
//
// judgement: roots reach down as leaves reach up, so by the root of the leaf that a
// full stand has; perennials that came up from old crowns have all of theirs.
func (c *canopy) root(i int, p *outlook.Growing, d *outlook.GrowingDay) {
	depth := max(leastRootM, p.Use.RootDepthM)
	reach := leastRootM + (depth-leastRootM)*math.Sqrt(d.Full)
	if p.Planting.YearsOld > 0 {
		reach = depth
	}
	if c.depth > 0 {
		reach = min(reach, c.depth)
	}
	c.roots[i] = max(c.roots[i], reach)
}
