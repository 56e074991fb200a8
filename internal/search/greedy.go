package search

import (
	"container/heap"

	"garner/internal/programme"
)

// gain is what the next unit of a sowing is worth.
type gain struct {
	sowing int32
	worth  float64 // for each week of ground
	round  int     // number of units taken of its demand when it was priced
}

// gains is a heap, the most worth first.
type gains []gain

func (g gains) Len() int { return len(g) }
func (g gains) Less(i, k int) bool {
	if g[i].worth != g[k].worth {
		return g[i].worth > g[k].worth
	}
	return g[i].sowing < g[k].sowing
}
func (g gains) Swap(i, k int) { g[i], g[k] = g[k], g[i] }
func (g *gains) Push(x any)   { *g = append(*g, x.(gain)) }
func (g *gains) Pop() any {
	last := (*g)[len(*g)-1]
	*g = (*g)[:len(*g)-1]
	return last
}

// greedy takes unit after unit of what is worth most for the ground and time it
// holds. A worth hardly ever rises when more is taken, so a sowing is priced again
// only when it comes to the top (Minoux 1978, "Accelerated greedy algorithms").
func (c *chain) greedy() {
	p := c.s.Problem
	rounds := make([]int, len(p.Demands))
	var list gains
	for d := range c.byDemand {
		for _, j := range c.byDemand[d] {
			if c.s.Room(int(j)) > 0 {
				if g := c.gain(j, 0); g.worth > 0 {
					list = append(list, g)
				}
			}
		}
	}
	heap.Init(&list)
	for len(list) > 0 {
		g := heap.Pop(&list).(gain)
		d := p.Sowings[g.sowing].Demand
		if c.s.Room(int(g.sowing)) == 0 {
			continue
		}
		if g.round != rounds[d] {
			if g = c.gain(g.sowing, rounds[d]); g.worth > 0 {
				heap.Push(&list, g)
			}
			continue
		}
		c.shift(g.sowing, 1)
		c.s.Settle()
		c.keep()
		rounds[d]++
		if g = c.gain(g.sowing, rounds[d]); g.worth > 0 {
			heap.Push(&list, g)
		}
	}
}

func (c *chain) gain(j int32, round int) gain {
	w := &c.s.Problem.Sowings[j]
	drop := -c.s.Price(programme.Change{Sowing: int(j), Units: 1})
	return gain{j, drop / float64(w.Last-w.First+1), round}
}
