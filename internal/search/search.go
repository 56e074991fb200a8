package search

import (
	"math"
	"sync"

	"garner/internal/num"
	"garner/internal/programme"
)

// Asked is how a search is to be run.
type Asked struct {
	Seed  uint64
	Steps int            // moves that each chain tries; 0: until Stop
	Stop  func() bool    // asked every few hundred moves, from several places at once; nil: never
	Told  func(Progress) // of the first chain, at times; may be nil
}

// Progress is how far a search has come.
type Progress struct {
	Steps     int     // moves tried by the first chain
	Objective float64 // of its best solution so far
	Bound     float64 // no solution is better
}

// Found is what a search came to.
type Found struct {
	Units     programme.Solution
	Objective float64
	Bound     float64 // no solution is better; minus infinity when it was stopped before any was found
	Steps     int     // moves tried by the first chain
}

// chains anneal side by side, each with its own luck.
const chains = 2

// How many steps of the bound guide the annealing, and how many more are taken
// beside it.
const (
	guideSteps = 1200
	boundSteps = 6000
	boundStep  = 50 // between looks

	largeEntries = 400_000 // numbers that a step of the bound looks at, from which fewer are taken
)

// Run searches from a standing, which stays as it is. A short round begins at once;
// meanwhile the prices are found that guide the long one.
func Run(from *programme.Standing, asked Asked) Found {
	first := newChain(from, asked, 0)
	first.greedy()
	first.keepBest()
	first.tell(math.Inf(-1))
	b := NewBound(from.Problem)
	b.Aim(first.bestCost)
	best := run(first, b, asked)
	objective, err := from.Problem.Objective(best.best)
	if err != nil {
		objective = best.bestCost
	}
	return Found{Units: best.best, Objective: objective, Bound: b.Value, Steps: first.steps}
}

// run anneals all chains while the bound goes on, and returns the best chain.
func run(first *chain, b *Bound, asked Asked) *chain {
	all := []*chain{first}
	for n := 1; n < chains; n++ {
		other := newChain(first.s, asked, n)
		other.keepBest()
		other.asked.Told = nil
		all = append(all, other)
	}
	var g guided
	ready := make(chan struct{})
	var wait sync.WaitGroup
	for _, c := range all {
		wait.Go(func() { c.rounds(ready, &g) })
	}
	wait.Go(func() {
		bounded(b, guideSteps, asked)
		g = guided{b.Beyond(), b.Value}
		close(ready)
		bounded(b, boundSteps, asked)
	})
	wait.Wait()
	best := first
	for _, c := range all[1:] {
		if c.bestCost < best.bestCost {
			best = c
		}
	}
	return best
}

// guided is what the bound's first steps tell the chains.
type guided struct {
	beyond []float64
	bound  float64
}

// bounded takes steps towards a better bound; a short search is given few, and so is
// a problem so large that many would take longer than they help.
func bounded(b *Bound, steps int, asked Asked) {
	steps = min(steps, max(boundStep, steps*largeEntries/max(1, b.Entries())))
	if asked.Steps > 0 {
		steps = min(steps, boundStep+asked.Steps/50)
	}
	for ; steps > 0; steps -= boundStep {
		if asked.Stop != nil && asked.Stop() {
			return
		}
		b.Step(min(steps, boundStep))
	}
}

// chain is one line of annealing.
type chain struct {
	asked  Asked
	s      *programme.Standing
	number int
	stream *num.Stream

	byDemand [][]int32 // sowings that may be taken
	byGround [][]int32
	taken    taken
	ofDemand []lots // how often the sowings of a demand are tried
	ofGround []lots
	ofAll    lots
	moved    []int32 // sowings moved in the trial

	best     programme.Solution
	bestCost float64
	bound    float64
	steps    int
	stopped  bool
}

func newChain(from *programme.Standing, asked Asked, number int) *chain {
	p := from.Problem
	c := &chain{asked: asked, s: from.Clone(), number: number, stream: num.NewStream(num.Key("search"), asked.Seed, uint64(number)),
		byDemand: make([][]int32, len(p.Demands)), byGround: make([][]int32, len(p.Grounds)),
		taken: newTaken(p), bound: math.Inf(-1)}
	for j := range p.Sowings {
		w := &p.Sowings[j]
		if w.Most > 0 {
			c.byDemand[w.Demand] = append(c.byDemand[w.Demand], int32(j))
			c.byGround[w.Ground] = append(c.byGround[w.Ground], int32(j))
		}
		c.taken.note(int32(j), c.s.Units[j])
	}
	return c
}

func (c *chain) keepBest() {
	if cost := c.s.Objective(); c.best == nil || cost < c.bestCost-1e-9 {
		c.best, c.bestCost = append(c.best[:0], c.s.Units...), cost
	}
}

func (c *chain) tell(bound float64) {
	if c.asked.Told != nil {
		c.asked.Told(Progress{c.steps, c.bestCost, bound})
	}
}

// Moves between two looks at the time, and between two words of progress.
const (
	lookEvery = 256
	tellEvery = 8192
)

// done tells whether the chain is at its end.
func (c *chain) done() bool {
	if c.asked.Steps > 0 && c.steps >= c.asked.Steps {
		return true
	}
	if c.steps%lookEvery == 0 && c.asked.Stop != nil && c.asked.Stop() {
		c.stopped = true
	}
	if c.steps%tellEvery == 0 {
		c.tell(c.bound)
	}
	return c.stopped
}
