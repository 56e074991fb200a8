package jobs

import (
	"cmp"
	"slices"
)

// Cut is jobs cut to the time there is.
type Cut struct {
	Jobs    []Job // kept, in their order
	Dropped []Job // what costs most to put off first
	Minutes float64
	Over    float64 // minutes of what was dropped
}

// To cuts jobs to so many minutes. What costs more at the table to put off is kept
// before what costs less, and then what has the nearer last day; a job that does not
// fit is dropped, and a smaller one after it may still fit.
func To(jobs []Job, minutes float64) Cut {
	order := make([]int, len(jobs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return pressing(&jobs[a], &jobs[b]) })
	var c Cut
	keep := make([]bool, len(jobs))
	for _, i := range order {
		if c.Minutes+jobs[i].Minutes <= minutes {
			keep[i] = true
			c.Minutes += jobs[i].Minutes
			continue
		}
		c.Dropped = append(c.Dropped, jobs[i])
		c.Over += jobs[i].Minutes
	}
	for i, k := range keep {
		if k {
			c.Jobs = append(c.Jobs, jobs[i])
		}
	}
	return c
}

// pressing orders jobs by what it costs to put them off, then by their last day.
func pressing(a, b *Job) int {
	return cmp.Or(cmp.Compare(b.PutOffKg(), a.PutOffKg()), cmp.Compare(a.Last, b.Last))
}

// Pressing are the jobs that cost most to put off, at most so many, in that order;
// those that cost nothing at the table are not among them.
func Pressing(jobs []Job, n int) []Job {
	order := slices.Clone(jobs)
	slices.SortStableFunc(order, func(a, b Job) int { return pressing(&a, &b) })
	var out []Job
	seen := map[string]bool{}
	for _, j := range order {
		if len(out) < n && j.PutOffKg() >= worthPicking && !seen[j.Series] {
			seen[j.Series] = true // of its turns the dearest stands for all
			out = append(out, j)
		}
	}
	return out
}

// For are the jobs that somebody can do.
func For(jobs []Job, who Who) []Job {
	var out []Job
	for _, j := range jobs {
		if who.Can(j.Who) {
			out = append(out, j)
		}
	}
	return out
}

// Minutes adds up work.
func Minutes(jobs []Job) float64 {
	sum := 0.0
	for i := range jobs {
		sum += jobs[i].Minutes
	}
	return sum
}
