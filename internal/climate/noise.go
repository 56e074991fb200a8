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

// drawDay takes a day's numbers. Normals come in pairs (Box & Muller 1958).
func drawDay(s *num.Stream, d *draws) {
	d.rainy, d.amount = s.Float64(), s.Float64()
	d.normal[0], d.normal[1] = normalPair(s)
	d.normal[2], d.normal[3] = normalPair(s)
	d.normal[4], _ = normalPair(s)
}

func normalPair(s *num.Stream) (x, y float64) {
	r := math.Sqrt(-2 * math.Log(1-s.Float64()))
	sin, cos := math.Sincos(2 * math.Pi * s.Float64())
	return r * cos, r * sin
}

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

// slowMonth returns the slow departures of a month: a function of the key and
// the date alone.
func (g *Generator) slowMonth(k key, year, month int) (out slowVector) {
	for back, w := range slowWeights {
		y, m := year, month-back
		if m < 1 {
			y, m = y-1, m+12
		}
		s := k.stream(y, m, forMonth)
		var e slowVector
		for i := 0; i < slowElements; i += 2 {
			e[i], e[i+1] = normalPair(&s)
		}
		for i := range out {
			for j := 0; j <= i; j++ {
				out[i] += w * g.months[m-1].slowRoot[i][j] * e[j]
			}
		}
	}
	return out
}
