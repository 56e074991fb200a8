package carry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The cheapest way is the one that trying all ways finds.
func TestCheapestIsTheCheapestOfAll(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(0, 6).Draw(r, "n")
		costs := make([][]float64, n)
		for i := range costs {
			for range n {
				costs[i] = append(costs[i], float64(rapid.IntRange(0, 30).Draw(r, "cost")))
			}
		}
		got := cheapest(costs)
		sum, taken := 0.0, map[int]bool{}
		for i, k := range got {
			sum += costs[i][k]
			taken[k] = true
		}
		if len(taken) != n {
			r.Fatalf("%v gives a column twice", got)
		}
		if want := byTrying(costs, 0, map[int]bool{}); sum != want {
			r.Fatalf("%v costs %g, the cheapest %g", got, sum, want)
		}
	})
}

func byTrying(costs [][]float64, row int, taken map[int]bool) float64 {
	if row == len(costs) {
		return 0
	}
	least := math.Inf(1)
	for k := range costs {
		if !taken[k] {
			taken[k] = true
			least = min(least, costs[row][k]+byTrying(costs, row+1, taken))
			delete(taken, k)
		}
	}
	return least
}
