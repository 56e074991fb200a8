package watering

import (
	"cmp"
	"slices"

	"garner/internal/water"
)

// everyDays are the rounds that somebody may make while you are away: every so many
// days after the day of leaving.
var everyDays = []int{1, 2, 3, 4, 7}

// Round is what somebody brings to a bed who comes every so many days while no rain
// falls: each time as much as fills the ground, where it would not last until the next.
type Round struct {
	EveryD int
	Lasts  bool      // the bed does not suffer in so many of the futures as Away.Odds tells
	GiveL  []float64 // on each of the days, in a time that asks much: the same one for all beds
}

// rounds gathers one such round by future.
type rounds struct {
	every int
	fails []bool
	give  [][]float64 // by future and day
}

func newRounds(futures int) []rounds {
	var out []rounds
	for _, every := range everyDays {
		out = append(out, rounds{every: every, fails: make([]bool, futures), give: make([][]float64, futures)})
	}
	return out
}

// add goes through the days away with a tract, rain left out.
func (r *rounds) add(c *course, f int, b water.Balance, leave, back int) {
	c.rainless = true
	defer func() { c.rainless = false }()
	visit := 0
	for i := leave + 1; i < min(back, len(c.given)); i++ {
		mm := 0.0
		if (i-leave)%r.every == 0 {
			b.Reach(&c.stands[i])
			if b.MissingMM > 0 && c.alone(b, i, min(back, i+r.every)) >= 0 {
				mm = b.MissingMM
			}
			if visit >= len(r.give[f]) {
				r.give[f] = append(r.give[f], 0)
			}
			r.give[f][visit] += mm * c.areaM2[i]
			visit++
		}
		if c.day(&b, i, mm).Stress < 1 {
			r.fails[f] = true
		}
	}
}

// of is a round as it is told, in one future.
func (r *rounds) of(future int, odds float64) Round {
	out := Round{EveryD: r.every, GiveL: r.give[future]}
	failing := 0
	for _, fails := range r.fails {
		if fails {
			failing++
		}
	}
	out.Lasts = float64(failing) <= (1-odds)*float64(len(r.fails))+1e-9
	return out
}

// litres adds what is brought in each future.
func (r *rounds) litres(into []float64) {
	for f := range r.give {
		for _, l := range r.give[f] {
			into[f] += l
		}
	}
}

// thirsty is the future of which so large a share ask for no more. Days on which a bed is
// given differ from one future to the next, so that a middle of each day would tell none
// of them; one whole future is told.
func thirsty(litres []float64, odds float64) int {
	order := make([]int, len(litres))
	for f := range order {
		order[f] = f
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(litres[a], litres[b]) })
	return order[rank(len(order), odds)]
}

// EveryDays are the rounds that are worked out, the closest first.
func EveryDays() []int { return slices.Clone(everyDays) }
