package search

import (
	"math"
	"slices"
)

// The temperatures between which a round falls, as shares of the usual rise, and from
// how many moves that is taken. Chosen by runs on invented problems of 120 to 960
// units, and on two invented gardens that are not of the benchmark: the rise of a single unit is what tells hot from cold, however large the
// whole is.
const (
	coldest = 0.003
	samples = 400
)

// hottest are the temperatures at which a round begins, by chain: some problems want
// much put about, others are spoilt by it.
var hottest = [chains]float64{0.3, 0.03}

// rounds anneals: a short round first, so that something good is there early, then
// guided, a long one with what is left; without an end, each round is twice the one
// before.
func (c *chain) rounds(ready <-chan struct{}, g *guided) {
	if len(c.s.Problem.Sowings) == 0 {
		return
	}
	length := 1 << 15
	if c.asked.Steps > 0 {
		length = c.asked.Steps / 8
	}
	c.guide(make([]float64, len(c.s.Problem.Sowings)))
	c.anneal(length)
	<-ready
	c.guide(g.beyond)
	c.bound = g.bound
	if c.asked.Steps > 0 {
		length = c.asked.Steps - c.steps
	}
	for ; !c.done(); length *= 2 {
		c.anneal(length)
	}
}

// anneal tries so many moves, from the best so far, at falling temperatures.
func (c *chain) anneal(moves int) {
	c.restore()
	scale, hot := c.usualRise(), hottest[c.number]
	for i := range moves {
		if c.done() {
			return
		}
		c.steps++
		heat := scale * hot * math.Pow(coldest/hot, float64(i)/float64(moves))
		if !c.propose() {
			c.undo()
			continue
		}
		rise := c.s.Settle()
		if rise <= 0 || c.stream.Float64() < math.Exp(-rise/heat) {
			c.keep()
			c.keepBest()
			continue
		}
		c.undo()
	}
}

// usualRise is the median rise of a few moves of those that make it dearer.
func (c *chain) usualRise() float64 {
	var rises []float64
	for range samples {
		if c.propose() {
			if rise := c.s.Settle(); rise > 1e-9 {
				rises = append(rises, rise)
			}
		}
		c.undo()
	}
	if len(rises) == 0 {
		return 1
	}
	slices.Sort(rises)
	return rises[len(rises)/2]
}

// restore goes back to the best solution.
func (c *chain) restore() {
	for j, n := range c.best {
		if more := n - c.s.Units[j]; more != 0 {
			c.shift(int32(j), more)
		}
	}
	c.s.Settle()
	c.keep()
}

// shift takes units more or fewer, for trial.
func (c *chain) shift(j int32, units int) {
	c.s.Shift(int(j), units)
	c.moved = append(c.moved, j)
	c.taken.note(j, c.s.Units[j])
}

func (c *chain) keep() {
	c.s.Keep()
	c.moved = c.moved[:0]
}

func (c *chain) undo() {
	c.s.Undo()
	for _, j := range c.moved {
		c.taken.note(j, c.s.Units[j])
	}
	c.moved = c.moved[:0]
}

// How often a move clears some ground and fills it anew; otherwise, how often it puts
// in, puts one in the place of another, or else only takes out; how many go out at most
// to make room; and how often and with how many tries the room left over is filled
// again.
const (
	anew       = 0.1
	putIn      = 0.45
	putInPlace = 0.97
	mostOut    = 4
	fillAgain  = 0.5
	fillTries  = 8
	asNear     = 0.3 // of those in the place of another, which are near it in the list
	nearness   = 4
)

// propose makes a move for trial; false when none came of it.
func (c *chain) propose() bool {
	if c.stream.Float64() < anew {
		return c.rebuild()
	}
	switch x := c.stream.Float64(); {
	case x < putIn:
		return c.insert(int32(c.ofAll.draw(c.stream)))
	case x < putInPlace:
		out := c.standing()
		if out < 0 {
			return false
		}
		c.shift(out, -1)
		return c.insert(c.like(out))
	default:
		out := c.standing()
		if out < 0 {
			return false
		}
		c.shift(out, -1)
		return true
	}
}

// like is another sowing of the same demand, often one near in the list: the same
// crop a little sooner or later.
func (c *chain) like(j int32) int32 {
	d := c.s.Problem.Sowings[j].Demand
	list := c.byDemand[d]
	if c.stream.Float64() < asNear {
		at, _ := slices.BinarySearch(list, j)
		at += c.stream.IntN(2*nearness+1) - nearness
		if at >= 0 && at < len(list) {
			return list[at]
		}
	}
	if at := c.ofDemand[d].draw(c.stream); at >= 0 {
		return list[at]
	}
	return -1
}

// standing is a taken sowing of any ground; -1 when there is none.
func (c *chain) standing() int32 {
	for range 8 {
		list := c.taken.lists[c.stream.IntN(c.taken.resource)]
		if n := len(list); n > 0 {
			return list[c.stream.IntN(n)]
		}
	}
	return -1
}

// insert puts a unit in, takes out what stands in its way, and may fill what that
// leaves free.
func (c *chain) insert(j int32) bool {
	if j < 0 {
		return false
	}
	for range mostOut {
		if c.s.Room(int(j)) > 0 {
			c.shift(j, 1)
			c.fill(c.s.Problem.Sowings[j].Ground)
			return true
		}
		out := c.inTheWay(j)
		if out < 0 {
			return false
		}
		c.shift(out, -1)
	}
	return false
}

// fill puts a unit into the ground that a move has freed, when one of a few drawn
// has room.
func (c *chain) fill(ground int) {
	if len(c.moved) < 2 || c.stream.Float64() > fillAgain {
		return
	}
	for range fillTries {
		at := c.ofGround[ground].draw(c.stream)
		if at < 0 {
			return
		}
		if j := c.byGround[ground][at]; c.s.Room(int(j)) > 0 {
			c.shift(j, 1)
			return
		}
	}
}

// inTheWay is a taken sowing that holds what lacks for another; -1 when there is none.
func (c *chain) inTheWay(j int32) int32 {
	lack, lacks := c.s.Lacks(int(j))
	if !lacks {
		return -1
	}
	list := c.taken.lists[c.taken.group(lack)]
	if len(list) == 0 {
		return -1
	}
	begin := c.stream.IntN(len(list))
	for i := range list {
		other := list[(begin+i)%len(list)]
		if other != j && c.s.Relieves(int(other), lack) {
			return other
		}
	}
	return -1
}
