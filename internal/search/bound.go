package search

import (
	"math"

	"garner/internal/programme"
)

// Bound looks for a value that no solution can beat: the dual of the relaxation in
// which units may be parts.
//
// It is found by the primal-dual hybrid gradient method (Chambolle & Pock 2011,
// Journal of Mathematical Imaging and Vision 40:120-145) with diagonal steps (Pock &
// Chambolle 2011, ICCV) and restarts from averages (Applegate and others 2021,
// "Practical large-scale linear programming using primal-dual hybrid gradient").
// Any multipliers give a true bound, since all columns have an upper limit, so that
// it may be stopped at any time.
type Bound struct {
	Value      float64   // the best bound so far
	Multiplier []float64 // of the rows, that gave it

	l          *relaxed
	x, y       []float64 // where it stands
	sumX, sumY []float64 // since the last restart
	n          int       // steps in the sums
	weight     float64   // of the primal steps against the dual ones
	anchorX    []float64
	anchorY    []float64
	pull, gap  []float64 // A'y and b - Ax
	next       []float64
	last       float64 // distance from the optimum at the last restart
}

// relaxed is a linear programme by rows and by columns, without whole numbers.
type relaxed struct {
	cost, upper, right []float64
	equal              []bool
	byRow, byColumn    sparse
	stepX, stepY       []float64
}

// sparse is a matrix by lists.
type sparse struct {
	start []int32
	index []int32
	value []float64
}

// NewBound begins the search for a bound.
func NewBound(p *programme.Problem) *Bound {
	l := relax(p.Linear())
	m, n := len(l.right), len(l.cost)
	b := &Bound{Value: math.Inf(-1), l: l, weight: 1, last: math.Inf(1),
		x: make([]float64, n), y: make([]float64, m), sumX: make([]float64, n), sumY: make([]float64, m),
		anchorX: make([]float64, n), anchorY: make([]float64, m),
		pull: make([]float64, n), gap: make([]float64, m), next: make([]float64, n), Multiplier: make([]float64, m)}
	costs, rights := norm(l.cost), norm(l.right)
	if costs > 0 && rights > 0 {
		b.weight = costs / rights
	}
	b.l.transposed(b.y, b.pull)
	return b
}

// relax turns columns to lists and gives every column an upper limit: no arc
// carries more than its week wants, and no more is over than can come.
func relax(l *programme.Linear) *relaxed {
	out := &relaxed{right: make([]float64, len(l.Rows)), equal: make([]bool, len(l.Rows))}
	for i := range l.Rows {
		out.right[i], out.equal[i] = l.Rows[i].Right, l.Rows[i].Sense == programme.Equally
	}
	most := make([]float64, len(l.Rows)) // what can come into a row of lots
	counts := make([]int32, len(l.Rows)+1)
	for i := range l.Columns {
		for _, e := range l.Columns[i].Entries {
			counts[e.Row+1]++
			if e.Value < 0 {
				most[e.Row] -= e.Value * l.Columns[i].Upper
			}
		}
	}
	for i := range l.Columns {
		c := &l.Columns[i]
		upper := c.Upper
		out.byColumn.start = append(out.byColumn.start, int32(len(out.byColumn.index)))
		for _, e := range c.Entries {
			out.byColumn.index = append(out.byColumn.index, int32(e.Row))
			out.byColumn.value = append(out.byColumn.value, e.Value)
			if e.Value > 0 {
				upper = min(upper, (l.Rows[e.Row].Right+most[e.Row])/e.Value)
			}
		}
		out.cost, out.upper = append(out.cost, c.Cost), append(out.upper, math.Max(0, upper))
	}
	out.byColumn.start = append(out.byColumn.start, int32(len(out.byColumn.index)))
	out.byRow = out.byColumn.turned(counts)
	out.steps()
	return out
}

// turned lists by rows what s lists by columns.
func (s *sparse) turned(counts []int32) sparse {
	for i := 1; i < len(counts); i++ {
		counts[i] += counts[i-1]
	}
	out := sparse{start: append([]int32(nil), counts...), index: make([]int32, len(s.index)), value: make([]float64, len(s.value))}
	at := append([]int32(nil), counts...)
	for c := 0; c+1 < len(s.start); c++ {
		for e := s.start[c]; e < s.start[c+1]; e++ {
			r := s.index[e]
			out.index[at[r]], out.value[at[r]] = int32(c), s.value[e]
			at[r]++
		}
	}
	return out
}

// steps are those of Pock & Chambolle (2011), lemma 2 with alpha 1.
func (l *relaxed) steps() {
	sums := func(s *sparse, n int) []float64 {
		out := make([]float64, n)
		for i := range n {
			sum := 0.0
			for _, v := range s.value[s.start[i]:s.start[i+1]] {
				sum += math.Abs(v)
			}
			out[i] = 1 / math.Max(sum, 1e-9)
		}
		return out
	}
	l.stepX, l.stepY = sums(&l.byColumn, len(l.cost)), sums(&l.byRow, len(l.right))
}

// transposed is A'y.
func (l *relaxed) transposed(y, out []float64) {
	for c := range out {
		sum := 0.0
		for e := l.byColumn.start[c]; e < l.byColumn.start[c+1]; e++ {
			sum += l.byColumn.value[e] * y[l.byColumn.index[e]]
		}
		out[c] = sum
	}
}

// lacking is b - Ax.
func (l *relaxed) lacking(x, out []float64) {
	for r := range out {
		sum := l.right[r]
		for e := l.byRow.start[r]; e < l.byRow.start[r+1]; e++ {
			sum -= l.byRow.value[e] * x[l.byRow.index[e]]
		}
		out[r] = sum
	}
}

// Step takes steps and returns the best bound so far.
func (b *Bound) Step(steps int) float64 {
	for range steps {
		b.step()
	}
	b.judge()
	return b.Value
}

func (b *Bound) step() {
	l := b.l
	for c := range b.x {
		was := b.x[c]
		now := was - l.stepX[c]/b.weight*(l.cost[c]-b.pull[c])
		now = math.Min(math.Max(now, 0), l.upper[c])
		b.x[c], b.next[c] = now, 2*now-was
	}
	l.lacking(b.next, b.gap)
	for r := range b.y {
		y := b.y[r] + l.stepY[r]*b.weight*b.gap[r]
		if !l.equal[r] && y > 0 {
			y = 0
		}
		b.y[r] = y
	}
	l.transposed(b.y, b.pull)
	for c, x := range b.x {
		b.sumX[c] += x
	}
	for r, y := range b.y {
		b.sumY[r] += y
	}
	b.n++
}

// judge looks at where it stands and at the mean since the last restart, notes the
// better bound, and starts anew from the better of the two when it has come far
// enough.
func (b *Bound) judge() {
	meanX, meanY := make([]float64, len(b.x)), make([]float64, len(b.y))
	for c := range meanX {
		meanX[c] = b.sumX[c] / float64(b.n)
	}
	for r := range meanY {
		meanY[r] = b.sumY[r] / float64(b.n)
	}
	b.take(b.y)
	b.take(meanY)
	here, mean := b.off(b.x, b.y), b.off(meanX, meanY)
	if best := math.Min(here, mean); best < 0.3*b.last || b.n > 4000 {
		if mean < here {
			copy(b.x, meanX)
			copy(b.y, meanY)
		}
		b.restart(best)
	}
}

// take notes the bound that multipliers give.
func (b *Bound) take(y []float64) {
	if value := b.value(y); value > b.Value {
		b.Value = value
		copy(b.Multiplier, y)
	}
}

// value is the dual value of multipliers.
func (b *Bound) value(y []float64) float64 {
	l := b.l
	sum := 0.0
	for r, m := range y {
		sum += m * l.right[r]
	}
	l.transposed(y, b.next)
	for c, pull := range b.next {
		if reduced := l.cost[c] - pull; reduced < 0 {
			sum += reduced * l.upper[c]
		}
	}
	return sum
}

// off is how far a pair is from optimal: what rows lack and by how much the values
// differ, each against its size.
func (b *Bound) off(x, y []float64) float64 {
	l := b.l
	cost := 0.0
	for c := range x {
		cost += l.cost[c] * x[c]
	}
	l.lacking(x, b.gap)
	lack := 0.0
	for r, g := range b.gap {
		if l.equal[r] || g < 0 {
			lack += g * g
		}
	}
	value := b.value(y)
	return math.Sqrt(lack)/(1+norm(l.right)) + math.Abs(cost-value)/(1+math.Abs(cost)+math.Abs(value))
}

// restart begins new means and sets the weight by how far each side has moved.
func (b *Bound) restart(off float64) {
	movedX, movedY := distance(b.x, b.anchorX), distance(b.y, b.anchorY)
	if movedX > 1e-9 && movedY > 1e-9 {
		b.weight = math.Exp(0.5*math.Log(movedY/movedX) + 0.5*math.Log(b.weight))
	}
	copy(b.anchorX, b.x)
	copy(b.anchorY, b.y)
	clear(b.sumX)
	clear(b.sumY)
	b.n, b.last = 0, off
	b.l.transposed(b.y, b.pull)
}

// Reduced are the reduced costs of the first n columns under the multipliers that
// gave the best bound: what a unit costs beyond what it brings there.
func (b *Bound) Reduced(n int) []float64 {
	b.l.transposed(b.Multiplier, b.next)
	out := make([]float64, n)
	for c := range out {
		out[c] = b.l.cost[c] - b.next[c]
	}
	return out
}

func norm(x []float64) float64 { return distance(x, nil) }

func distance(x, y []float64) float64 {
	sum := 0.0
	for i := range x {
		d := x[i]
		if y != nil {
			d -= y[i]
		}
		sum += d * d
	}
	return math.Sqrt(sum)
}
