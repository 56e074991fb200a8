package shade

import (
	"math"

	"garner/internal/place"
)

// Grid is the light of a month over a plan, at the corners of squares.
type Grid struct {
	StepM      float64
	Columns    int       // along the plan's bottom edge, at 0, StepM, ...
	Rows       int       // from the bottom up
	Light      []float64 // row by row from the bottom left, 0-1
	WidthM     float64
	DepthM     float64
	LeastLight float64
}

// mostGridPoints keeps the map of a large site quick; leastGridM one of a small
// site honest.
const (
	mostGridPoints = 2600
	leastGridM     = 0.25
)

// Map returns the light of a month, 1-12, over a plan, for the diffuse share
// that is usual in it. A site without a plan gives an empty grid.
func (s *Scene) Map(site place.Site, month int, diffuseShare float64) Grid {
	g := Grid{WidthM: site.PlanWidthM, DepthM: site.PlanDepthM, LeastLight: 1}
	if !(g.WidthM > 0 && g.DepthM > 0) {
		return g
	}
	g.StepM = max(leastGridM, math.Sqrt(g.WidthM*g.DepthM/mostGridPoints))
	g.Columns, g.Rows = int(math.Ceil(g.WidthM/g.StepM))+1, int(math.Ceil(g.DepthM/g.StepM))+1
	g.Light = make([]float64, 0, g.Columns*g.Rows)
	var e eye
	m := s.monthOf(month)
	for r := range g.Rows {
		for c := range g.Columns {
			x, y := min(g.WidthM, float64(c)*g.StepM), min(g.DepthM, float64(r)*g.StepM)
			light := 1.0
			if e.look(s.obstacles, x, y) {
				light = m.light(&e, diffuseShare)
			}
			g.LeastLight = min(g.LeastLight, light)
			g.Light = append(g.Light, light)
		}
	}
	return g
}

// BedInMonth is the light of a bed in a month, 1-12, the mean over its ground and
// the month's tenths, for the diffuse share that is usual in it.
func (s *Scene) BedInMonth(b place.Bed, number int, diffuseShare float64) float64 {
	var e eye
	m := s.monthOf(number)
	points := Points(&b, bedPoints)
	sum := 0.0
	for _, p := range points {
		if e.look(s.obstacles, p.X, p.Y) {
			sum += m.light(&e, diffuseShare)
		} else {
			sum++
		}
	}
	return sum / float64(len(points))
}

// month is what a month needs of a scene.
type month struct {
	*Scene
	tenths []int
	states []float64
}

func (s *Scene) monthOf(number int) month {
	m := month{Scene: s, tenths: []int{3*number - 3, 3*number - 2, 3*number - 1}}
	if s.stateOf[m.tenths[0]] == s.stateOf[m.tenths[2]] && s.stateOf[m.tenths[0]] == s.stateOf[m.tenths[1]] {
		m.states = make([]float64, 1)
	} else {
		m.states = make([]float64, len(m.tenths))
	}
	return m
}

// light is the mean over the three tenths of the month at what the eye sees.
func (m *month) light(e *eye, diffuseShare float64) float64 {
	clear(m.states)
	e.diffuse(&m.round, m.tenths[:len(m.states)], m.states)
	sum := 0.0
	for i, t := range m.tenths {
		diffuse := m.states[min(i, len(m.states)-1)]
		sum += Light(beam(e.seen, m.days[t], t), diffuse, diffuseShare) / float64(len(m.tenths))
	}
	return sum
}
