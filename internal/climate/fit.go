package climate

import (
	"math"

	"garner/internal/fault"
	"garner/internal/sun"
	"garner/internal/words"
)

// FitGenerator makes a generator from a daily record of ten or more years: its
// own means, spreads, correlations and slow anomalies. Elements that the record
// does not hold, or holds too rarely, are those of NewGenerator from the
// record's normals.
func FitGenerator(r *Record, loc sun.Location) (*Generator, error) {
	if years := yearsOnFile(r); years < replayYears {
		return nil, fault.New(fault.Invalid, "climate.record_short", words.Args{"years": years, "least": replayYears})
	}
	n, err := NormalsOf(r)
	if err != nil {
		return nil, err
	}
	months := estimateMonths(&n, loc)
	f := newFitSeries(r, loc)
	for i := range months {
		f.fitRain(&months[i], i)
	}
	known := f.fitElements(&months)
	f.fitBends(&months, known, newGenerator(months, loc))
	// The shapes so far turn the record into standard normal departures.
	z := f.departures(newGenerator(months, loc), known)
	z.fitCorrelations(&months, known)
	f.fitSlowRain(&months)
	return newGenerator(months, loc), nil
}

// leastDays is how many days of a month of the year an element needs before it
// is fitted.
const leastDays = 200

// moments gathers mean and spread.
type moments struct{ n, sum, square float64 }

func (m *moments) add(v float64) { m.n, m.sum, m.square = m.n+1, m.sum+v, m.square+v*v }

func (m *moments) mean() float64 { return m.sum / m.n }

func (m *moments) sd() float64 {
	return math.Sqrt(math.Max(0, m.square/m.n-m.mean()*m.mean()) * m.n / math.Max(1, m.n-1))
}

// fitElements sets contrasts and spreads from the record and returns which
// elements it could do so for.
func (f *fitSeries) fitElements(months *[12]month) (known [variables]bool) {
	for v := range known {
		mean, ok := f.monthlyMeans(v)
		if known[v] = ok; !ok {
			continue
		}
		curve := smooth(mean)
		var m [12][spells]moments
		for t, value := range f.values[v] {
			s, ok := f.spellAt(t)
			if math.IsNaN(value) || !ok {
				continue
			}
			if ratio(v) {
				value = value/math.Max(curve[f.index[t]], 0.01) - 1
			} else {
				value -= curve[f.index[t]]
			}
			m[f.month[t]][s].add(value)
		}
		for i := range months {
			setElement(&months[i].elements[v], v, mean[i], &m[i])
		}
	}
	return known
}

// fitBends sets the bends of mean and range from the departures that a generator
// without them, g, would have to draw.
func (f *fitSeries) fitBends(months *[12]month, known [variables]bool, g *Generator) {
	z := f.departures(g, known)
	for v := range known {
		if !known[v] || !bent(v) {
			continue
		}
		var values [12][states][]float64
		for t, x := range z.z[v] {
			if !math.IsNaN(x) {
				m, s := f.month[t], f.stateAt(t)
				values[m][s] = append(values[m][s], x)
			}
		}
		for i := range months {
			for s := range states {
				months[i].elements[v].bends[s] = fitBend(values[i][s])
			}
		}
	}
}

// leastState is how many days of a spell are needed to tell it from others.
const leastState = 25

func setElement(e *element, v int, mean float64, m *[spells]moments) {
	scale := 1.0
	if v == varHumidity {
		scale = 100
	}
	e.mean = mean * scale
	e.bends = [states]bend{newBend(0, 0), newBend(0, 0)}
	for s := range m {
		if m[s].n < leastState {
			return
		}
	}
	contrast, after := twoContrasts(m)
	e.contrast, e.after = contrast*scale, after*scale
	for s := range states {
		a, b := &m[spellOf(s == wet, false)], &m[spellOf(s == wet, true)]
		within := (a.sd()*a.sd()*a.n + b.sd()*b.sd()*b.n) / (a.n + b.n)
		e.sd[s] = math.Sqrt(within) * scale
	}
}

// twoContrasts fits the means of the spells by an effect of the day's own state
// and one of the day before's, by least squares over the days.
func twoContrasts(m *[spells]moments) (contrast, after float64) {
	var n, x, y, xx, yy, xy, z, xz, yz float64
	for s := range spells {
		a, b, days := float64(s.today()), float64(s.yesterday()), m[s].n
		n, x, y = n+days, x+days*a, y+days*b
		xx, yy, xy = xx+days*a*a, yy+days*b*b, xy+days*a*b
		z, xz, yz = z+m[s].sum, xz+m[s].sum*a, yz+m[s].sum*b
	}
	xx, yy, xy = xx-x*x/n, yy-y*y/n, xy-x*y/n
	xz, yz = xz-x*z/n, yz-y*z/n
	det := xx*yy - xy*xy
	return (xz*yy - yz*xy) / det, (yz*xx - xz*xy) / det
}

// monthlyMeans returns an element's mean in each month of the year; ok is false
// when one of them has too few days.
func (f *fitSeries) monthlyMeans(v int) (mean [12]float64, ok bool) {
	var m [12]moments
	for t, value := range f.values[v] {
		if !math.IsNaN(value) {
			m[f.month[t]].add(value)
		}
	}
	for i := range m {
		if m[i].n < leastDays {
			return mean, false
		}
		mean[i] = m[i].mean()
	}
	return mean, true
}

// fitRain sets a month's chain and the shape of its rain.
func (f *fitSeries) fitRain(m *month, i int) {
	var days, wetDays, pairs, bothWet, afterDryPairs, thenWet float64
	var logs, sum float64
	for t, rain := range f.rain {
		s := f.stateAt(t)
		if f.month[t] != i || s == unknownState {
			continue
		}
		days++
		if s == wet {
			wetDays++
			excess := math.Max(rain-WetDayMM, 0) + 0.05 // half a step of the gauge
			logs, sum = logs+math.Log(excess), sum+excess
		}
		if t == 0 || f.stateAt(t-1) == unknownState {
			continue
		}
		if f.stateAt(t-1) == wet {
			pairs++
			bothWet += float64(s)
		} else {
			afterDryPairs++
			thenWet += float64(s)
		}
	}
	if days < leastDays {
		return
	}
	m.wetShare = wetDays / days
	if pairs >= leastState && afterDryPairs >= leastState {
		m.persistence = bothWet/pairs - thenWet/afterDryPairs
	}
	if wetDays >= leastState {
		m.rainShape = gammaShape(math.Log(sum/wetDays) - logs/wetDays)
	}
}

// gammaShape is Thom's estimate of a gamma shape from the logarithm of the mean
// less the mean of the logarithms, held to 0.3-3.
//
// Source: Thom 1958, "A note on the gamma distribution", Monthly Weather Review
// 86:117-122.
func gammaShape(a float64) float64 {
	shape := (1 + math.Sqrt(1+4*a/3)) / (4 * a)
	return math.Max(0.3, math.Min(3, shape))
}
