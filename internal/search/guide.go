package search

import (
	"math"
	"slices"

	"garner/internal/num"
)

// lots are running sums from which a place is drawn.
type lots []float64

func (l lots) with(weight float64) lots {
	if len(l) > 0 {
		weight += l[len(l)-1]
	}
	return append(l, weight)
}

// draw is a place by its weight; -1 when there is none.
func (l lots) draw(s *num.Stream) int {
	if len(l) == 0 {
		return -1
	}
	at, _ := slices.BinarySearch(l, s.Float64()*l[len(l)-1])
	return min(at, len(l)-1)
}

// How a sowing's weight falls with what it costs beyond the cheapest use of its
// ground. They were chosen by runs on invented problems: a search is spoilt by leaving
// sowings out, not by trying some in vain.
const (
	nearUnits   = 1    // costs beyond count as small up to that of so many times the units of ground
	leastWeight = 0.01 // of a sowing that costs far more than it brings
)

// guide sets how often sowings are tried: the more often the less dear their ground's
// cheapest use becomes with them under the bound's prices.
func (c *chain) guide(beyond []float64) {
	p := c.s.Problem
	units := 0
	for g := range p.Grounds {
		units += p.Grounds[g].Units
	}
	near := 0.0
	if sorted := slices.Sorted(slices.Values(beyond)); len(sorted) > 0 {
		near = sorted[min(len(sorted)-1, nearUnits*units)]
	}
	near = math.Max(near, 1e-6)
	weight := func(j int32) float64 {
		x := math.Max(0, beyond[j]) / near
		return 1/(1+x*x*x) + leastWeight
	}
	of := func(list []int32) (out lots) {
		for _, j := range list {
			out = out.with(weight(j))
		}
		return out
	}
	c.ofDemand, c.ofGround, c.ofAll = nil, nil, nil
	for _, list := range c.byDemand {
		c.ofDemand = append(c.ofDemand, of(list))
	}
	for _, list := range c.byGround {
		c.ofGround = append(c.ofGround, of(list))
	}
	for j := range beyond {
		w := 0.0
		if p.Sowings[j].Most > 0 {
			w = weight(int32(j))
		}
		c.ofAll = c.ofAll.with(w)
	}
}
