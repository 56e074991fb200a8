package season

import (
	"garner/internal/canopy"
	"garner/internal/growth"
)

// Light is what a planting's leaves get of the light of the bed, 0-1.
type Light = canopy.Light

// shared parts the ground of a bed among plantings that stand under or between
// each other, and the light over it.
type shared struct {
	tied    bool // some share ground
	ties    []canopy.Tie
	there   []bool
	patches []canopy.Patch
	leaves  []canopy.Leaves
	lights  []canopy.Light
}

func (g *shared) begin(plantings []Planting) {
	g.tied = false
	for i := range plantings {
		g.tied = g.tied || plantings[i].Shares >= 0
	}
	if !g.tied {
		return
	}
	g.ties, g.there, g.patches = g.ties[:0], g.there[:0], g.patches[:0]
	for i := range plantings {
		p := &plantings[i]
		g.ties = append(g.ties, canopy.Tie{To: p.Shares, Meet: p.Beneath, AreaM2: p.AreaM2, Sparse: p.Parameters.Use.Sparse})
		g.there = append(g.there, false)
	}
	g.leaves, g.lights = resize(g.leaves, len(plantings)), resize(g.lights, len(plantings))
}

// light works out what each planting gets on a day, from yesterday's leaves.
func (g *shared) light(stands []stand, day int) {
	g.see(stands, day)
	for i := range stands {
		stands[i].shared, stands[i].light, stands[i].beside = false, canopy.Light{}, 0
	}
	for k := range g.patches {
		g.patch(stands, &g.patches[k])
	}
	for i := range stands {
		if g.ties[i].Sparse > 0 && g.there[i] {
			stands[i].Crowd(stands[i].params, stands[i].beside)
		}
	}
}

// see parts the ground anew when a planting, or a share of it, has come or gone.
func (g *shared) see(stands []stand, day int) {
	changed := false
	for i := range stands {
		s := &stands[i]
		there, held := s.active(day) && !s.elsewhere() && s.left > 0, s.from.AreaM2*s.left
		changed = changed || there != g.there[i] || there && held != g.ties[i].AreaM2
		g.there[i], g.ties[i].AreaM2, g.ties[i].LostM2 = there, held, s.from.AreaM2-held
	}
	if changed {
		g.patches = canopy.Ground(g.ties, func(i int) bool { return g.there[i] })
	}
}

// patch adds the light that one piece of ground gives those on it, and how far
// others fill it.
func (g *shared) patch(stands []stand, p *canopy.Patch) {
	for k, i := range p.On {
		g.leaves[k] = stands[i].Leaves(stands[i].params)
	}
	canopy.Share(g.leaves[:len(p.On)], g.lights[:len(p.On)])
	for k, i := range p.On {
		s := &stands[i]
		s.shared = s.shared || len(p.On) > 1
		part := p.AreaM2 / g.ties[i].AreaM2
		s.light.Top += part * g.lights[k].Top
		s.light.Caught += part * g.lights[k].Caught
		if g.ties[i].Sparse > 0 {
			s.beside += part * fullness(stands, p.On, i)
		}
	}
}

// fullness is how far the leaves of all but one of those on a piece of ground
// fill it, in full stands.
func fullness(stands []stand, on []int, but int) (sum float64) {
	for _, i := range on {
		if i != but {
			sum += stands[i].Fullness(stands[i].params)
		}
	}
	return sum
}

// got is what the planting's leaves got today.
func (s *stand) got() Light {
	if s.shared {
		return s.light
	}
	return Light{Top: 1, Caught: growth.Intercepted(s.params.Use.Extinction, s.Leaf)}
}
