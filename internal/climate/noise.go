package climate

import (
	"math"

	"garner/internal/num"
)

// key names the stream of random numbers of one future of one site.
type key struct{ seed, future, site uint64 }

// Streams of one month are kept apart by what they are for, so that a draw more
// in one cannot shift the other.
const (
	forDays uint64 = iota + 1
	forMonth
)

func (k key) stream(year, month int, what uint64) num.Stream {
	return num.Keyed(k.seed, k.future, k.site, uint64(int64(year)), uint64(month), what)
}

// draws are the random numbers of one day; every day uses as many.
type draws struct {
	rainy, amount float64 // uniform, 0-1
	normal        vector
}

// drawDay takes a day's numbers.
func drawDay(s *num.Stream, d *draws) {
	d.rainy, d.amount = s.Float64(), s.Float64()
	for i := range d.normal {
		d.normal[i] = normal(s)
	}
}

// normal returns a draw from the standard normal distribution by its quantile
// function, one number of the stream each: faster here than Box & Muller's
// pairs, and a day's numbers keep their places.
//
// Between the 1st and the 99th hundredth the quantile is read from a table by
// straight lines, within 1e-4; beyond, it is worked out (Wichura 1988, algorithm
// AS 241, which is what the library's inverse error function is).
func normal(s *num.Stream) float64 {
	p := (float64(s.Uint64()>>12) + 0.5) * (quantileSteps / float64(1<<52)) // never 0 or all steps
	if p < 0.01*quantileSteps || p > 0.99*quantileSteps {
		return normalQuantile(p / quantileSteps)
	}
	i := int(p)
	pair := &quantiles[i]
	return pair[0] + (p-float64(i))*pair[1]
}

func normalQuantile(u float64) float64 { return math.Sqrt2 * math.Erfinv(2*u-1) }

const quantileSteps = 2048

// quantiles holds the normal quantile at each step and the rise to the next.
var quantiles = func() (q [quantileSteps][2]float64) {
	for i := range q {
		if i > 0 && i < quantileSteps-1 {
			at := normalQuantile(float64(i) / quantileSteps)
			q[i] = [2]float64{at, normalQuantile(float64(i+1)/quantileSteps) - at}
		}
	}
	return q
}()

// slowElements are the weather elements and, last, rain.
const slowElements = variables + 1

// slowVector holds the slow departures of a month.
type slowVector [slowElements]float64

// slowMatrix is the lower triangular root of the correlations of the slow
// departures.
type slowMatrix [slowElements][slowElements]float64

// correlation returns the correlation of two slow departures.
func (l *slowMatrix) correlation(a, b int) (r float64) {
	for k := range l {
		r += l[a][k] * l[b][k]
	}
	return r
}

// slowMemory is how many months a month's slow departure looks back.
const slowMemory = 4

// slowWeights give a month's slow departure from the fresh draws of its own and
// of earlier months: squares sum to one, and neighbouring months agree.
var slowWeights = func() (w [slowMemory]float64) {
	sum := 0.0
	for i := range w {
		w[i] = math.Pow(slowDecay, float64(i))
		sum += w[i] * w[i]
	}
	for i := range w {
		w[i] /= math.Sqrt(sum)
	}
	return w
}()

// slowDecay is how much of a month's slow departure is left in the next.
const slowDecay = 0.3

// slowNeighbour is the correlation of neighbouring months' slow departures.
var slowNeighbour = func() (r float64) {
	for i := 1; i < slowMemory; i++ {
		r += slowWeights[i-1] * slowWeights[i]
	}
	return r
}()

// freshSlow returns the fresh draws of a month with the correlations of the
// elements: a function of the key and the month alone.
func (g *Generator) freshSlow(k key, at yearMonth) (out slowVector) {
	s := k.stream(at.year, at.month, forMonth)
	var e slowVector
	for i := range e {
		e[i] = normal(&s)
		for j, r := range g.months[at.month-1].slowRoot[i][:i+1] {
			out[i] += r * e[j]
		}
	}
	return out
}

// slowWave gives the slow departures month after month.
type slowWave struct {
	g     *Generator
	key   key
	next  yearMonth
	fresh [slowMemory]slowVector // the newest first
}

// newSlowWave starts a wave whose first value is that of a month.
func newSlowWave(g *Generator, k key, at yearMonth) *slowWave {
	w := &slowWave{g: g, key: k, next: at.plus(1 - slowMemory)}
	for range slowMemory - 1 {
		w.step()
	}
	return w
}

// step returns the departures of the next month.
func (w *slowWave) step() (out slowVector) {
	copy(w.fresh[1:], w.fresh[:slowMemory-1])
	w.fresh[0] = w.g.freshSlow(w.key, w.next)
	w.next = w.next.plus(1)
	for back, weight := range slowWeights {
		for i := range out {
			out[i] += weight * w.fresh[back][i]
		}
	}
	return out
}
