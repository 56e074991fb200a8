package search

import (
	"slices"

	"garner/internal/programme"
)

// track is a class of ground: units alike, each of which bears a chain of sowings,
// one after the other. As all units are alike the cheapest chain is that of each.
type track struct {
	units       float64
	sowings     []int32 // by rising last week
	first, last []int32
	before      []float64 // by week: least cost of a chain that is over before it
	after       []float64 // by week: least cost of a chain that begins in it or later
	by          []int32   // by week: the place of the sowing that is last before it, or -1
}

func tracksOf(p *programme.Problem) []track {
	out := make([]track, len(p.Grounds))
	for g := range out {
		out[g] = track{units: float64(p.Grounds[g].Units), before: make([]float64, p.Weeks+1), after: make([]float64, p.Weeks+1), by: make([]int32, p.Weeks+1)}
	}
	for j := range p.Sowings {
		if p.Sowings[j].Most > 0 {
			t := &out[p.Sowings[j].Ground]
			t.sowings = append(t.sowings, int32(j))
		}
	}
	for g := range out {
		t := &out[g]
		slices.SortStableFunc(t.sowings, func(a, b int32) int { return p.Sowings[a].Last - p.Sowings[b].Last })
		for _, j := range t.sowings {
			t.first, t.last = append(t.first, int32(p.Sowings[j].First)), append(t.last, int32(p.Sowings[j].Last))
		}
	}
	return out
}

// chain finds the cheapest chain when each sowing costs so much, gives each sowing in
// it to use, and returns its cost.
func (t *track) chain(cost []float64, use func(sowing int32)) float64 {
	weeks := len(t.before) - 1
	at := 0
	for week := range weeks {
		best, by := t.before[week], int32(-1)
		for ; at < len(t.sowings) && int(t.last[at]) == week; at++ {
			if c := t.before[t.first[at]] + cost[t.sowings[at]]; c < best {
				best, by = c, int32(at)
			}
		}
		t.before[week+1], t.by[week+1] = best, by
	}
	for week := weeks; week > 0; {
		by := t.by[week]
		if by < 0 {
			week--
			continue
		}
		use(t.sowings[by])
		week = int(t.first[by])
	}
	return t.before[weeks]
}

// beyond writes for each sowing how much dearer the cheapest chain with it is than the
// cheapest one. It follows chain.
func (t *track) beyond(cost, out []float64) {
	weeks := len(t.before) - 1
	t.after[weeks] = 0
	order := slices.Clone(t.by[:0])
	for at := range t.sowings {
		order = append(order, int32(at))
	}
	slices.SortStableFunc(order, func(a, b int32) int { return int(t.first[b] - t.first[a]) })
	at := 0
	for week := weeks - 1; week >= 0; week-- {
		best := t.after[week+1]
		for ; at < len(order) && int(t.first[order[at]]) == week; at++ {
			best = min(best, t.after[t.last[order[at]]+1]+cost[t.sowings[order[at]]])
		}
		t.after[week] = best
	}
	for at, j := range t.sowings {
		out[j] = t.before[t.first[at]] + cost[j] + t.after[t.last[at]+1] - t.before[weeks]
	}
}
