package main

import (
	"fmt"
	"runtime"
	"time"

	"garner/internal/programme"
	"garner/internal/search"
)

// own is the product's search for so many seconds.
type own struct {
	name    string
	seconds func(cap int) int
}

// owns are the searches that are run: one as long as the solvers, and one as long
// as a person is to wait for a plan of thirty beds.
var owns = []own{
	{"garner", func(cap int) int { return cap }},
	{"garner in 10 s", func(int) int { return 10 }},
}

// solve searches on one processor, as the solvers do.
func (o own) solve(p *programme.Problem, cap int) (Run, error) {
	seconds := o.seconds(cap)
	run := Run{By: o.name, Asked: fmt.Sprintf("seed 1, %d s, one processor", seconds)}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	w := &watch{begin: time.Now(), run: &run}
	end := w.begin.Add(time.Duration(seconds) * time.Second)
	found := search.Run(p.NewStanding(), search.Asked{
		Seed: 1,
		Stop: func() bool { return time.Now().After(end) },
		Told: func(now search.Progress) { w.found(now.Objective) },
	})
	w.found(found.Objective)
	w.bounded(found.Bound)
	run.Seconds = w.seconds()
	return run, count(&run, found.Units, &found.Objective, p)
}
