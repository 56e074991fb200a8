package programme

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// flow is a small network for the test: successive cheapest paths (Ford & Fulkerson
// 1962, "Flows in Networks"), which shares nothing with the feeder.
type flow struct {
	to, cap []int
	cost    []float64
	from    []int
}

func (n *flow) edge(a, b, capacity int, cost float64) {
	n.from, n.to, n.cap, n.cost = append(n.from, a), append(n.to, b), append(n.cap, capacity), append(n.cost, cost)
	n.from, n.to, n.cap, n.cost = append(n.from, b), append(n.to, a), append(n.cap, 0), append(n.cost, -cost)
}

// cheapest sends flow from 0 to 1 while a path lowers the cost.
func (n *flow) cheapest(nodes int) float64 {
	sum := 0.0
	for {
		far := make([]float64, nodes)
		by := make([]int, nodes)
		for i := range far {
			far[i], by[i] = math.Inf(1), -1
		}
		far[0] = 0
		for range nodes {
			for e := range n.to {
				if d := far[n.from[e]] + n.cost[e]; n.cap[e] > 0 && d < far[n.to[e]]-1e-12 {
					far[n.to[e]], by[n.to[e]] = d, e
				}
			}
		}
		if far[1] >= -1e-12 {
			return sum
		}
		for v := 1; v != 0; v = n.from[by[v]] {
			n.cap[by[v]]--
			n.cap[by[v]^1]++
		}
		sum += far[1]
	}
}

// TestFeedingIsTheBestFlow holds the cost of a demand to that of the best flow from
// lots to weeks, found by another method, for lots and wants in whole kilograms.
func TestFeedingIsTheBestFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weeks := rapid.IntRange(1, 7).Draw(t, "weeks")
		levels := rapid.IntRange(1, 3).Draw(t, "levels")
		over := float64(rapid.IntRange(0, 3).Draw(t, "over")) / 4
		d := Demand{OverCost: over}
		cost := 8.0
		for range levels {
			cost -= float64(rapid.IntRange(0, 2).Draw(t, "fall"))
			l := Level{Cost: cost, PerWeek: make([]float64, weeks)}
			for u := range l.PerWeek {
				l.PerWeek[u] = float64(rapid.IntRange(0, 3).Draw(t, "want"))
			}
			d.Levels = append(d.Levels, l)
		}
		lots := make([]Lot, rapid.IntRange(0, 6).Draw(t, "lots"))
		for i := range lots {
			first := rapid.IntRange(0, weeks-1).Draw(t, "first")
			lots[i] = Lot{First: first, Last: rapid.IntRange(first, weeks).Draw(t, "last"), Kg: float64(rapid.IntRange(0, 5).Draw(t, "kg"))}
		}
		want, base := network(&d, lots, weeks)
		var f Feeder
		f.begin(weeks)
		f.add(lots, 1)
		wanted := make([]float64, levels)
		for i := range d.Levels {
			for _, kg := range d.Levels[i].PerWeek {
				wanted[i] += kg
			}
		}
		if got := f.cost(&d, wanted); math.Abs(got-(want+base)) > 1e-9 {
			t.Fatalf("feeding costs %v, the best flow %v", got, want+base)
		}
	})
}

// network is the cheapest flow, and what no flow at all costs.
func network(d *Demand, lots []Lot, weeks int) (best, none float64) {
	var n flow
	nodes := 2 + len(lots) + weeks + 1
	for i, l := range lots {
		n.edge(0, 2+i, int(l.Kg), -d.OverCost) // what is fed is not over
		none += d.OverCost * l.Kg
		for u := l.First; u <= l.Last; u++ {
			n.edge(2+i, 2+len(lots)+u, 100, 0)
		}
	}
	for _, l := range d.Levels {
		for u, kg := range l.PerWeek {
			n.edge(2+len(lots)+u, 1, int(kg), -l.Cost)
			none += l.Cost * kg
		}
	}
	n.edge(2+len(lots)+weeks, 1, 1000, 0) // what outlasts the problem
	return n.cheapest(nodes), none
}
