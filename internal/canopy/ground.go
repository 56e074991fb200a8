package canopy

// Tie says on whose ground a planting stands. The zero value of To means the
// planting at index 0: a planting with ground of its own has To -1.
type Tie struct {
	To     int     // index of the planting it stands under or between; -1: none
	Meet   float64 // share of its ground that lies among the other's leaves, 0-1
	AreaM2 float64 // ground it holds
	LostM2 float64 // ground it held and lost, open to those that stand on its ground
	Sparse float64 // share of the plants of a full stand that it lacks, 0-1
}

// Gaps is the share of a crop's ground that its own leaves leave open, 0-1.
//
// judgement: crops in rows never close over all of their ground (FAO AquaCrop
// gives tomato a cover of 0.75 at most), and bulb onions caught 69 % of the light
// at a leaf area of 3.7 (Brewster 2008, Table 4.2) where leaves without gaps
// would catch 84 %.
const Gaps = 0.2

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
// over lies outside). What of them does not lie among its leaves stands in its
// gaps, and when they are full, among its leaves after all: light that falls
// into a gap is given once. Only plants beyond those of one full stand find gaps:
// two half stands in turn by rows leave as much open as the one full stand of
// either, whose extinction counts its own gaps already, so that a crop in turn
// with itself is but that crop. A planting on the ground of one that itself stands on
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
	among, open := 0.0, 0.0
	for i := range g.ties {
		among += g.withinM2(i, host)
		open += g.openM2(i, host)
	}
	if among <= 0 {
		g.out = append(g.out, patches...)
		return
	}
	whole := g.ties[host].AreaM2
	inGaps := 1.0 // share of what asks for gaps that finds them
	if room := Gaps*whole + g.ties[host].LostM2; open > room {
		inGaps = room / open
	}
	meet := among - open*inGaps
	room := min(1, whole/meet)
	for i := range g.ties {
		within := g.withinM2(i, host)
		if within <= 0 {
			continue
		}
		m := (within - g.openM2(i, host)*inGaps) * room
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

// openM2 returns the ground of a planting within its host's that asks for gaps.
func (g *layout) openM2(i, host int) float64 {
	h, t := &g.ties[host], &g.ties[i]
	beyond := max(0, 1-h.Sparse-t.Sparse)
	return min(g.withinM2(i, host)*(1-t.Meet), Gaps*h.AreaM2*beyond+h.LostM2)
}

// withinM2 returns the ground of a planting that lies within its host's.
func (g *layout) withinM2(i, host int) float64 {
	if !g.there(i) || g.host(i) != host || g.ring(i) {
		return 0
	}
	return min(g.ties[i].AreaM2, g.ties[host].AreaM2)
}

func with(on []int, i int) []int { return append(append(make([]int, 0, len(on)+1), on...), i) }
