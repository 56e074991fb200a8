package climate

import "math"

// departures are a record's standard normal departures, NaN where not known.
type departures struct {
	z [variables][]float64
	*fitSeries
}

// departures turns the record into the departures that a generator with the
// record's shapes would have to draw.
func (f *fitSeries) departures(g *Generator, known [variables]bool) *departures {
	out := &departures{fitSeries: f}
	n := len(f.rain)
	for v := range out.z {
		out.z[v] = make([]float64, n)
		for t := range n {
			out.z[v][t] = math.NaN()
			if s, ok := f.spellAt(t); ok && known[v] {
				out.z[v][t] = g.days[f.index[t]].spell[s].departure(v, f.values[v][t])
			}
		}
	}
	return out
}

// departure is the inverse of Generator.day for one element.
func (s *spellModel) departure(v int, value float64) float64 {
	switch v {
	case varMean:
		return s.meanBend.inverse((value - s.meanC) / s.meanSD)
	case varRange:
		return s.rangeBend.inverse((math.Sqrt(value) - s.rangeA) / s.rangeB)
	case varSun:
		return (logit(value) - s.sunMid) / s.sunSpread
	case varHumidity:
		return (logit(value) - s.rhMid) / s.rhSpread
	}
	return (math.Sqrt(value) - s.windA) / s.windB
}

// product gathers the mean of a product of two departures.
type product struct{ n, xy, xx, yy, x, y float64 }

func (p *product) add(x, y float64) {
	if math.IsNaN(x) || math.IsNaN(y) {
		return
	}
	p.n++
	p.x, p.y = p.x+x, p.y+y
	p.xy, p.xx, p.yy = p.xy+x*y, p.xx+x*x, p.yy+y*y
}

// correlation returns the correlation coefficient; ok is false below leastDays.
func (p *product) correlation() (r float64, ok bool) {
	if p.n < leastDays {
		return 0, false
	}
	cov := p.xy/p.n - p.x/p.n*p.y/p.n
	return cov / math.Sqrt((p.xx/p.n-p.x/p.n*p.x/p.n)*(p.yy/p.n-p.y/p.n*p.y/p.n)), true
}

// near tells whether month m, 0-11, is month i or next to it.
func nearMonth(m, i int) bool { d := (m - i + 12) % 12; return d <= 1 || d == 11 }

// fitCorrelations sets the matrices and the slow shares of every month, each
// from the month and its two neighbours.
func (z *departures) fitCorrelations(months *[12]month, known [variables]bool) {
	for i := range months {
		m := &months[i]
		same, before := z.correlations(i, m)
		var shares [variables]float64
		for v := range shares {
			shares[v] = m.elements[v].slow
			if known[v] {
				shares[v] = slowShare(z.monthMeanVariance(v, i), before[v][v])
			}
			m.elements[v].slow = shares[v]
		}
		m.slowRoot = slowRoot(&same)
		m.same, m.before = withoutSlow(same, before, &shares, &m.slowRoot)
	}
}

// correlations returns the correlations of the departures on the same day and
// with the day before in month i and its neighbours; pairs that the record does
// not hold keep those of the month's estimate.
func (z *departures) correlations(i int, m *month) (same, before matrix) {
	var p0, p1 [variables][variables]product
	for t := range z.month {
		if !nearMonth(z.month[t], i) {
			continue
		}
		for a := range p0 {
			for b := range p0 {
				p0[a][b].add(z.z[a][t], z.z[b][t])
				if t > 0 {
					p1[a][b].add(z.z[a][t], z.z[b][t-1])
				}
			}
		}
	}
	same, before = withSlow(m)
	for a := range p0 {
		for b := range p0 {
			if r, ok := p0[a][b].correlation(); ok {
				same[a][b] = r
			}
			if r, ok := p1[a][b].correlation(); ok {
				before[a][b] = r
			}
		}
	}
	return same, before
}

// leastYears is how many years tell how much a month varies between years.
const leastYears = 5

// monthMeanVariance is the variance from year to year of the monthly means of a
// departure, over month i and its neighbours; NaN where too few are known.
func (z *departures) monthMeanVariance(v, i int) float64 {
	total, n := 0.0, 0.0
	for m := range 12 {
		if years := z.yearly(z.z[v], m); nearMonth(m, i) && years.n >= leastYears {
			total += years.sd() * years.sd()
			n++
		}
	}
	return total / n
}

// monthDays is the length of a mean month.
const monthDays = 30.44

// meanVariance is the variance of the mean over a month of a lag-1 process of
// unit variance.
func meanVariance(lag1 float64) float64 {
	sum := monthDays
	r := lag1
	for k := 1.0; k < monthDays; k++ {
		sum += 2 * (monthDays - k) * r
		r *= lag1
	}
	return sum / (monthDays * monthDays)
}

// slowShare returns the share of the variance of daily departures that has to
// be slow so that monthly means vary as seen, given the lag-1 correlation of the
// whole: the rest then forgets faster.
func slowShare(monthMean, lag1 float64) float64 {
	if math.IsNaN(monthMean) {
		return 0
	}
	low, high := 0.0, math.Min(0.9, math.Max(lag1, 0))
	for range 40 {
		f := (low + high) / 2
		fast := (lag1 - f*slowDayToDay) / (1 - f)
		if (1-f)*meanVariance(fast)+f*slowMonthMean < monthMean {
			low = f
		} else {
			high = f
		}
	}
	return (low + high) / 2
}

const slowDayToDay = 1.0

// slowMonthMean is the variance of the monthly mean of a slow departure of unit
// variance (worked out from slowOn).
var slowMonthMean = func() float64 {
	const steps = 30
	var own, side float64
	for i := range steps {
		one, _ := slowWeightsOn(i, steps)
		own += one / steps
		_, other := slowWeightsOn(i, steps)
		side += other / steps / 2 // half of it from the month before, half from the one after
	}
	return own*own + 2*side*side + 4*own*side*slowNeighbour
}()

// withSlow returns the correlations of the departures with their slow part, as
// a record would show them; withoutSlow is its inverse.
func withSlow(m *month) (same, before matrix) {
	for a := range same {
		for b := range same {
			fast := math.Sqrt((1 - m.elements[a].slow) * (1 - m.elements[b].slow))
			slow := math.Sqrt(m.elements[a].slow*m.elements[b].slow) * m.slowRoot.correlation(a, b)
			same[a][b] = fast*m.same[a][b] + slow
			before[a][b] = fast*m.before[a][b] + slow
		}
	}
	return same, before
}

func withoutSlow(same, before matrix, shares *[variables]float64, root *slowMatrix) (s, b matrix) {
	for i := range same {
		for j := range same {
			fast := math.Sqrt((1 - shares[i]) * (1 - shares[j]))
			slow := math.Sqrt(shares[i]*shares[j]) * root.correlation(i, j)
			s[i][j] = (same[i][j] - slow) / fast
			b[i][j] = (before[i][j] - slow) / fast
		}
	}
	return s, b
}

// fitSlowRain sets how much more the monthly sums of rain vary than the chain
// alone gives.
func (f *fitSeries) fitSlowRain(months *[12]month) {
	var seen, chain [12]float64
	for i := range months {
		seen[i], chain[i] = math.NaN(), months[i].chainVariation()
		if sums := f.yearly(f.rain, i); sums.n >= leastYears && sums.mean() > 0 {
			seen[i] = math.Pow(sums.sd()/sums.mean(), 2)
		}
	}
	for i := range months {
		total, n := 0.0, 0.0
		for j := range months {
			if nearMonth(j, i) && !math.IsNaN(seen[j]) {
				total += seen[j] - chain[j]
				n++
			}
		}
		if n > 0 {
			months[i].slowRain = math.Sqrt(math.Max(0, total/n))
		}
	}
}

// chainVariation is the squared coefficient of variation of a month's rain from
// the chain and the spread of wet days' amounts.
func (m *month) chainVariation() float64 {
	if m.wetShare <= 0 {
		return 0
	}
	days := monthDays * m.wetShare
	amount := m.rainMM / days
	excess := math.Max(0, amount-WetDayMM)
	spread := excess * excess / m.rainShape / (amount * amount)
	d := m.persistence
	return (spread + (1-m.wetShare)*(1+d)/(1-d)) / days
}
