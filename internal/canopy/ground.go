package canopy

// Tie says on whose ground a planting stands. The zero value of To means the
// planting at index 0: a planting with ground of its own has To -1.
type Tie struct {
	To     int     // index of the planting it stands under or between; -1: none
	Meet   float64 // share of its ground that lies among the other's leaves, 0-1
	AreaM2 float64 // ground it holds
}

// Patch is a piece of ground with the plantings whose leaves stand on it.
type Patch struct {
	AreaM2 float64
	On     []int
}

// Ground parts the ground of plantings into patches on which the same leaves
// stand. Only plantings for which there tells yes are laid; one whose host is
// not there has its ground for itself.
//
// Several plantings on the ground of one stand beside each other there, as long
// as there is room, and share the room in proportion when there is not (what is
// over lies outside). A planting on the ground of one that itself stands on
// another's is spread evenly over it. judgement: nothing is told of who stands
// where. Ties may not go in a ring; what is in a ring stands alone.
func Ground(ties []Tie, there func(int) bool) []Patch {
	g := layout{ties: ties, there: there}
	for i := range ties {
		if there(i) && (g.host(i) < 0 || g.ring(i)) {
			g.lay(i, []Patch{{ties[i].AreaM2, []int{i}}})
		}
	}
	return g.out
}

type layout struct {
	ties  []Tie
	there func(int) bool
	out   []Patch
}

// host returns the planting there on whose ground another stands, -1 for none.
func (g *layout) host(i int) int {
	if k := g.ties[i].To; k >= 0 && k != i && k < len(g.ties) && g.there(k) && g.ties[i].Meet > 0 {
		return k
	}
	return -1
}

// ring tells whether a planting's ties come back to it.
func (g *layout) ring(i int) bool {
	at := g.host(i)
	for range g.ties {
		if at < 0 || at == i {
			break
		}
		at = g.host(at)
	}
	return at == i
}

// lay takes the patches on which a planting stands, and parts them among the
// plantings that stand on its ground.
func (g *layout) lay(host int, patches []Patch) {
	meet := 0.0
	for i := range g.ties {
		meet += g.meetM2(i, host)
	}
	if meet <= 0 {
		g.out = append(g.out, patches...)
		return
	}
	whole := g.ties[host].AreaM2
	room := min(1, whole/meet)
	for i := range g.ties {
		m := g.meetM2(i, host) * room
		if m <= 0 {
			continue
		}
		var own []Patch
		for _, p := range patches {
			own = append(own, Patch{p.AreaM2 * m / whole, with(p.On, i)})
		}
		if rest := g.ties[i].AreaM2 - m; rest > 0 {
			own = append(own, Patch{rest, []int{i}})
		}
		g.lay(i, own)
	}
	if free := 1 - meet*room/whole; free > 0 {
		for _, p := range patches {
			g.out = append(g.out, Patch{p.AreaM2 * free, p.On})
		}
	}
}

// meetM2 returns the ground of a planting that lies among its host's leaves.
func (g *layout) meetM2(i, host int) float64 {
	if !g.there(i) || g.host(i) != host || g.ring(i) {
		return 0
	}
	return g.ties[i].Meet * min(g.ties[i].AreaM2, g.ties[host].AreaM2)
}

func with(on []int, i int) []int { return append(append(make([]int, 0, len(on)+1), on...), i) }
