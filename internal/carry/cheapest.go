package carry

import "math"

// cheapest gives each row a column of its own so that the costs come to least: the
// assignment problem, by shortest augmenting paths (Kuhn 1955; Jonker and Volgenant
// 1987). The costs are square and finite; the answer is the column by row.
func cheapest(costs [][]float64) []int {
	n := len(costs)
	rows, columns := make([]float64, n+1), make([]float64, n+1) // prices; the last is the root's
	held := make([]int, n+1)                                    // row by column, n: none
	for k := range held {
		held[k] = n
	}
	for row := range n {
		augment(costs, row, rows, columns, held)
	}
	out := make([]int, n)
	for k := range n {
		out[held[k]] = k
	}
	return out
}

// augment takes one more row in: along the cheapest path of columns that give up
// their row for another.
func augment(costs [][]float64, row int, rows, columns []float64, held []int) {
	n := len(costs)
	least, before, done := make([]float64, n), make([]int, n), make([]bool, n+1)
	for k := range least {
		least[k] = math.Inf(1)
	}
	held[n] = row
	at := n
	for held[at] < n {
		done[at] = true
		i, next, step := held[at], n, math.Inf(1)
		for k := range n {
			if done[k] {
				continue
			}
			if cost := costs[i][k] - rows[i] - columns[k]; cost < least[k] {
				least[k], before[k] = cost, at
			}
			if least[k] < step {
				step, next = least[k], k
			}
		}
		for k := range n + 1 {
			if done[k] {
				rows[held[k]] += step
				columns[k] -= step
			} else if k < n {
				least[k] -= step
			}
		}
		at = next
	}
	for at != n {
		held[at] = held[before[at]]
		at = before[at]
	}
	held[n] = n
}
