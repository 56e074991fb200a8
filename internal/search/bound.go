package search

import (
	"math"

	"garner/internal/programme"
)

// Bound looks for a value that no solution can beat: the Lagrangian dual in which the
// weeks of each demand pay prices, and resources and limits cost some. With any prices
// the cheapest use of the ground is found exactly, so that any prices give a true
// bound and the search for better ones may be stopped at any time. The best of them is
// that of the relaxation in which units may be parts, since the weeks of ground make an
// interval matrix.
//
// Prices are found by the volume algorithm (Barahona & Anbil 2000, Mathematical
// Programming 87:385-399): steps along a running mean of the subgradients, from the
// best prices so far.
type Bound struct {
	Value float64 // the best bound so far

	m           *priced
	best, now   []float64 // prices of weeks, then costs of rows
	slope, mean []float64 // subgradient, and its running mean
	scale       []float64 // how far a price moves for what lacks
	worth       []float64 // of a class of lots [1/kg]
	week        []int32   // in which a class is eaten; -1: goes over
	kg          []float64 // of a class
	cost        []float64 // of a unit of a sowing
	pace        float64   // of the steps
	mix         float64   // share of the newest subgradient in the mean
	poor        int       // steps without a better bound, in a row
	told        float64   // objective of a solution; infinite when none is known
}

// How the steps are set: much as Barahona & Anbil (2000) do, with patience and
// the last mixture chosen by runs on invented problems, first prices and the scale of
// rows by runs on two invented gardens that are not of the benchmark, after the scales
// had been tried on three that are.
const (
	firstPace = 0.5
	leastPace = 1e-4
	mostPace  = 1.9
	patience  = 10 // steps without a better bound until they get shorter
	slower    = 0.8
	faster    = 1.1
	firstMix  = 0.1
	leastMix  = 0.03

	firstPrice = 0.3
	rowScale   = 0.03 // rows move more slowly than weeks: many sowings share one
)

// NewBound begins the search for a bound.
func NewBound(p *programme.Problem) *Bound {
	m := price(p)
	n := len(m.markets)*m.weeks + len(m.rows)
	b := &Bound{Value: math.Inf(-1), m: m, best: make([]float64, n), now: make([]float64, n), slope: make([]float64, n), mean: make([]float64, n),
		worth: make([]float64, len(m.lots)), week: make([]int32, len(m.lots)), kg: make([]float64, len(m.lots)), cost: make([]float64, len(m.sowings)),
		pace: firstPace, mix: firstMix, told: math.Inf(1)}
	b.scale = b.scales()
	b.open()
	b.Value = b.value(b.best)
	copy(b.mean, b.slope)
	return b
}

// open sets the first prices: a part of what the dearest level costs.
func (b *Bound) open() {
	for i := range b.m.markets {
		k := &b.m.markets[i]
		for u := range k.wanted {
			if k.wanted[u] > 0 {
				b.best[int(k.first)+u] = firstPrice * k.share * k.levels[0].Cost
			}
		}
	}
}

// Aim tells the objective of a solution: steps are no longer than they need be.
func (b *Bound) Aim(objective float64) { b.told = min(b.told, objective) }

// Entries is how many numbers a step looks at.
func (b *Bound) Entries() int {
	n := 0
	for j := range b.m.sowings {
		n += len(b.m.sowings[j].brings) + len(b.m.sowings[j].uses)
	}
	for i := range b.m.lots {
		n += int(b.m.lots[i].last-b.m.lots[i].first) + 1
	}
	return n
}

// Step takes steps and returns the best bound so far.
func (b *Bound) Step(steps int) float64 {
	for range steps {
		b.step()
	}
	return b.Value
}

func (b *Bound) step() {
	long := 0.0
	for i := range b.mean {
		long += b.scale[i] * b.mean[i] * b.mean[i]
	}
	if long < 1e-18 {
		return
	}
	by := b.pace * math.Max(b.aimed()-b.Value, 1e-9) / long
	for i := range b.now {
		b.now[i] = b.best[i] + by*b.scale[i]*b.mean[i]
	}
	b.fit(b.now)
	value := b.value(b.now)
	inner := 0.0
	for i := range b.mean {
		inner += b.scale[i] * b.mean[i] * b.slope[i]
		b.mean[i] += b.mix * (b.slope[i] - b.mean[i])
	}
	if value > b.Value {
		b.Value = value
		b.best, b.now = b.now, b.best
		b.poor = 0
		if inner > 0 {
			b.pace = min(mostPace, b.pace*faster)
		}
		return
	}
	if b.poor++; b.poor >= patience {
		b.poor = 0
		b.pace = max(leastPace, b.pace*slower)
		b.mix = max(leastMix, b.mix*0.9)
	}
}

// aimed is what the steps aim at: a solution's objective, or else a little above the
// bound.
func (b *Bound) aimed() float64 {
	if !math.IsInf(b.told, 1) {
		return b.told
	}
	return b.Value + 0.1*math.Abs(b.Value)
}

// fit keeps prices in the range in which they mean anything: a week pays no more than
// lacking costs and no less than going over; uses cost nothing or more.
func (b *Bound) fit(x []float64) {
	for i := range b.m.markets {
		k := &b.m.markets[i]
		for u, kg := range k.wanted {
			at := int(k.first) + u
			if kg == 0 {
				x[at] = 0
				continue
			}
			x[at] = math.Min(math.Max(x[at], -k.overCost), k.share*k.levels[0].Cost)
		}
	}
	for i := len(b.m.markets) * b.m.weeks; i < len(x); i++ {
		x[i] = math.Max(0, x[i])
	}
}

// value is the bound that prices give; it leaves the subgradient in slope.
func (b *Bound) value(x []float64) float64 {
	sum := b.lacking(x)
	b.sell(x)
	for i := range b.m.lots {
		b.kg[i] = b.m.lots[i].kg
		sum -= b.worth[i] * b.kg[i]
	}
	rows := x[len(b.m.markets)*b.m.weeks:]
	used := b.slope[len(b.m.markets)*b.m.weeks:]
	for r, most := range b.m.rows {
		sum -= rows[r] * most
		used[r] = -most
	}
	b.price(rows)
	for i := range b.m.tracks {
		t := &b.m.tracks[i]
		sum += t.units * t.chain(b.cost, func(j int32) {
			s := &b.m.sowings[j]
			for _, a := range s.brings {
				b.kg[a.of] += t.units * a.n
			}
			for _, a := range s.uses {
				used[a.of] += t.units * a.n
			}
		})
	}
	for i, week := range b.week {
		if week >= 0 {
			b.slope[week] -= b.kg[i]
		}
	}
	return sum
}

// lacking is what is wanted at its prices, less what it saves to go without where that
// is cheaper.
func (b *Bound) lacking(x []float64) float64 {
	sum := 0.0
	for i := range b.m.markets {
		k := &b.m.markets[i]
		for u, kg := range k.wanted {
			at := int(k.first) + u
			b.slope[at] = kg
			sum += kg * x[at]
			for l := range k.levels {
				if lacks := k.share*k.levels[l].Cost - x[at]; lacks < 0 {
					sum += k.levels[l].PerWeek[u] * lacks
					b.slope[at] -= k.levels[l].PerWeek[u]
				}
			}
		}
	}
	return sum
}

// sell brings each class of lots to the week that pays most.
func (b *Bound) sell(x []float64) {
	for i := range b.m.lots {
		c := &b.m.lots[i]
		k := &b.m.markets[c.market]
		best, week := -k.overCost, int32(-1)
		if c.outlasts {
			best = 0
		}
		for u := c.first; u <= c.last; u++ {
			if k.wanted[u] > 0 && x[k.first+u] > best {
				best, week = x[k.first+u], k.first+u
			}
		}
		b.worth[i], b.week[i] = best, week
	}
}

// price sets what a unit of each sowing costs beyond what it brings.
func (b *Bound) price(rows []float64) {
	for j := range b.m.sowings {
		s := &b.m.sowings[j]
		c := s.cost
		for _, a := range s.brings {
			c -= a.n * b.worth[a.of]
		}
		for _, a := range s.uses {
			c += a.n * rows[a.of]
		}
		b.cost[j] = c
	}
}

// Beyond is how much dearer the cheapest use of a unit of ground is with each sowing
// than at its cheapest, under the best prices: zero or more, and zero for a sowing that
// may not be taken.
func (b *Bound) Beyond() []float64 {
	b.value(b.best)
	out := make([]float64, len(b.m.sowings))
	for i := range b.m.tracks {
		b.m.tracks[i].beyond(b.cost, out)
	}
	return out
}
