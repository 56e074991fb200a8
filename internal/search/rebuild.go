package search

import "garner/internal/programme"

// How many units are cleared at most, and how many sowings are tried for each place.
const (
	mostCleared = 4
	tries       = 12
)

// rebuild clears a few units of one ground and fills it again, each time with the one
// of a few sowings drawn that is worth most for its time there.
func (c *chain) rebuild() bool {
	first := c.standing()
	if first < 0 {
		return false
	}
	ground := c.s.Problem.Sowings[first].Ground
	c.shift(first, -1)
	for out := c.stream.IntN(mostCleared); out > 0; out-- {
		list := c.taken.lists[ground]
		if len(list) == 0 {
			break
		}
		c.shift(list[c.stream.IntN(len(list))], -1)
	}
	c.s.Settle()
	for range 2 * mostCleared {
		j := c.bestOf(ground)
		if j < 0 {
			break
		}
		c.shift(j, 1)
		c.s.Settle()
	}
	return true
}

// bestOf is the one of a few sowings drawn for a ground, with room there, that saves
// most for its time; -1 when none saves anything.
func (c *chain) bestOf(ground int) int32 {
	best, by := int32(-1), 0.0
	for range tries {
		at := c.ofGround[ground].draw(c.stream)
		if at < 0 {
			return -1
		}
		j := c.byGround[ground][at]
		if c.s.Room(int(j)) == 0 {
			continue
		}
		w := &c.s.Problem.Sowings[j]
		if saves := -c.s.Price(programme.Change{Sowing: int(j), Units: 1}) / float64(w.Last-w.First+1); saves > by {
			best, by = j, saves
		}
	}
	return best
}
