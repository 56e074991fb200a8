package jobs

import "math"

// Share parts jobs, in the order of the route, among so many people: each gets one
// stretch of it, so that the longest stretch is as short as can be; where stretches
// come out alike the first are the longer. With fewer jobs than people some get none.
func Share(jobs []Job, people int) [][]Job {
	people = max(1, people)
	n := len(jobs)
	sum := make([]float64, n+1)
	for i := range jobs {
		sum[i+1] = sum[i] + jobs[i].Minutes
	}
	// longest[p][i] is the longest stretch when the first i jobs go to p people.
	longest, cut := make([][]float64, people+1), make([][]int, people+1)
	for p := range longest {
		longest[p], cut[p] = make([]float64, n+1), make([]int, n+1)
		for i := 1; i <= n; i++ {
			longest[p][i] = math.Inf(1)
			for k := 0; p > 0 && k <= i; k++ {
				if l := math.Max(longest[p-1][k], sum[i]-sum[k]); l < longest[p][i] {
					longest[p][i], cut[p][i] = l, k
				}
			}
		}
	}
	out := make([][]Job, people)
	for p, end := people, n; p > 0; p-- {
		start := cut[p][end]
		out[p-1] = jobs[start:end]
		end = start
	}
	return out
}
