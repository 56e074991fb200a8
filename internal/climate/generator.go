package climate

import (
	"math"

	"garner/internal/cal"
	"garner/internal/sun"
)

// Generator makes daily weather that is like a place's own without repeating
// it: a first-order chain of wet and dry days, gamma rain, correlated lag-1
// departures of the other elements given wet or dry (Richardson 1981, Water
// Resources Research 17:182-190; Richardson & Wright 1984, WGEN, USDA-ARS
// ARS-8), and slow anomalies over weeks to months, without which monthly means
// vary too little from year to year (Wilks & Wilby 1999).
//
// Departures from the source: the daily mean and the daily range are drawn in
// place of the two extremes, the range as a squared normal quantity, so that
// the maximum is never below the minimum and nothing has to be clipped;
// radiation and humidity are logistic functions of normal quantities, so that
// they keep within their bounds without losing their means; wind is added.
type Generator struct {
	location sun.Location
	months   [12]month
	days     [daysInYear]dayModel
	chain    [12]chain
	rain     [12]*rainTable
	ar       [12]recursion
}

// recursion is the step from yesterday's departures to today's.
type recursion struct{ a, b matrix }

// chain is the wet and dry chain of a month.
type chain struct {
	wetShare, persistence float64
	excessMM              float64 // mean rain of a wet day above WetDayMM
	slow                  float64 // coefficient of variation of the slow part
}

// dayModel is what the generator needs on one day of the year.
type dayModel struct {
	spell      [spells]spellModel
	fast, slow vector  // weights of the daily and the slow departures, squares summing to one
	skyLow     float64 // least radiation [MJ/m2]
	skySpan    float64 // most less least [MJ/m2]
}

// spellModel turns standard normal departures into a day's weather.
type spellModel struct {
	meanC, meanSD     float64
	rangeA, rangeB    float64 // range = (A + B z)^2 [C]
	sunMid, sunSpread float64 // share of the span between overcast and clear
	rhMid, rhSpread   float64
	windA, windB      float64 // wind = (A + B z)^2 [m/s]
	meanBend          bend
	rangeBend         bend
}

// The part of the radiation above the air that a very dark day lets through,
// and the part of FAO-56's clear-sky radiation that the clearest day reaches.
const (
	darkestShare  = 0.03 // judgement: the darkest days at De Bilt and Valentia
	clearestShare = 1.04 // judgement: the brightest days at De Bilt and Valentia
)

// skyBounds returns the least and the most radiation of a day [MJ/m2].
func skyBounds(loc sun.Location, dayOfYear int) (low, high float64) {
	ra := sun.ExtraterrestrialMJ(loc.LatitudeDeg, dayOfYear)
	return darkestShare * ra, clearestShare * sun.ClearSkyMJ(ra, loc.ElevationM)
}

// skyShare returns where radiation lies between the least and the most of a
// day, held a little inside; half-way where there is no light at all.
func skyShare(radiationMJ, low, high float64) float64 {
	if high-low < 0.01 {
		return 0.5
	}
	return math.Max(0.03, math.Min(0.97, (radiationMJ-low)/(high-low)))
}

// spellLag makes up for what the recursion does not know: that the air changes
// before the rain as well as after it. Without it the lag-1 correlations of the
// two extremes come out a tenth too low. Found on the stations of spread.csv.
const spellLag = 1.04

// newGenerator works out the day tables from what is known of the months.
func newGenerator(months [12]month, loc sun.Location) *Generator {
	g := &Generator{location: loc, months: months}
	tables := map[float64]*rainTable{}
	for i := range months {
		m := &months[i]
		before := m.before.times(&matrix{{spellLag}, {0, spellLag}, {0, 0, spellLag}, {0, 0, 0, spellLag}, {0, 0, 0, 0, spellLag}})
		a, b := autoregression(m.same, before)
		g.ar[i] = recursion{a, b}
		days := float64(cal.DaysInMonth(i + 1))
		g.chain[i] = chain{wetShare: m.wetShare, persistence: m.persistence, slow: m.slowRain}
		if m.wetShare > 0 {
			g.chain[i].excessMM = math.Max(0, m.rainMM/(days*m.wetShare)-WetDayMM)
		}
		if tables[m.rainShape] == nil {
			tables[m.rainShape] = newRainTable(m.rainShape)
		}
		g.rain[i] = tables[m.rainShape]
	}
	g.fillDays()
	return g
}

// curveOf is the smooth yearly curve of a monthly quantity.
func curveOf(months *[12]month, of func(*month) float64) yearCurve {
	var v [12]float64
	for i := range months {
		v[i] = of(&months[i])
	}
	return smooth(v)
}

func (g *Generator) fillDays() {
	tMin := curveOf(&g.months, func(m *month) float64 { return m.tMinC })
	tMax := curveOf(&g.months, func(m *month) float64 { return m.tMaxC })
	radiation := curveOf(&g.months, func(m *month) float64 { return m.radiationMJ })
	var curves [variables]elementCurves
	for v := range curves {
		curves[v] = elementCurvesOf(&g.months, v)
	}
	spreads := logitSpreads(&g.months)
	for d := range g.days {
		m := monthOf[d]
		day := &g.days[d]
		low, high := skyBounds(g.location, d+1)
		day.skyLow, day.skySpan = low, high-low
		var means [variables][spells]float64
		for v := range means {
			e := curves[v].at(d)
			e.bends = g.months[m].elements[v].bends
			switch v {
			case varMean:
				e.mean = (tMin[d] + tMax[d]) / 2
			case varRange:
				e.mean = math.Max(0.3, tMax[d]-tMin[d])
			case varSun:
				e.mean = skyShare(radiation[d], low, high)
			}
			means[v] = e.means(v, g.months[m].wetShare)
			day.slow[v] = math.Sqrt(e.slow)
			day.fast[v] = math.Sqrt(1 - e.slow)
			day.setSpells(v, e, means[v], spreads[m][v])
		}
	}
}

// setSpells fills in one element of a day's spells.
func (day *dayModel) setSpells(v int, e element, means [spells]float64, spread [states]float64) {
	for s := range spells {
		m := &day.spell[s]
		mean, sd := means[s], e.sd[s.today()]
		switch v {
		case varMean:
			m.meanC, m.meanSD, m.meanBend = mean, sd, e.bends[s.today()]
		case varRange:
			m.rangeA, m.rangeB = squareNormal(mean, sd*e.mean)
			m.rangeBend = e.bends[s.today()]
		case varSun:
			m.sunMid, m.sunSpread = logitMid(mean, spread[s.today()]), spread[s.today()]
		case varHumidity:
			m.rhMid, m.rhSpread = logitMid(mean/100, spread[s.today()]), spread[s.today()]
		case varWind:
			m.windA, m.windB = squareNormal(mean, sd*e.mean)
		}
	}
}

// elementCurves are the yearly curves of an element's figures.
type elementCurves struct {
	mean, contrast, after, slow yearCurve
	sd                          [states]yearCurve
}

func elementCurvesOf(months *[12]month, v int) (c elementCurves) {
	c.mean = curveOf(months, func(m *month) float64 { return m.elements[v].mean })
	c.contrast = curveOf(months, func(m *month) float64 { return m.elements[v].contrast })
	c.after = curveOf(months, func(m *month) float64 { return m.elements[v].after })
	c.slow = curveOf(months, func(m *month) float64 { return m.elements[v].slow })
	for s := range c.sd {
		c.sd[s] = curveOf(months, func(m *month) float64 { return m.elements[v].sd[s] })
	}
	return c
}

func (c *elementCurves) at(d int) element {
	e := element{mean: c.mean[d], contrast: c.contrast[d], after: c.after[d], slow: math.Max(0, math.Min(0.95, c.slow[d]))}
	for s := range c.sd {
		e.sd[s] = math.Max(0, c.sd[s][d])
	}
	return e
}

// logitSpreads works out the spread of the bounded elements once a month; the
// middle is then set day by day to keep the mean.
func logitSpreads(months *[12]month) (out [12][variables][states]float64) {
	for i := range months {
		m := &months[i]
		sunshine, humid := m.elements[varSun], m.elements[varHumidity]
		sunMeans, rhMeans := sunshine.stateMeans(varSun, m), humid.stateMeans(varHumidity, m)
		for s := range states {
			_, out[i][varSun][s] = logitNormal(sunMeans[s], sunshine.sd[s]*sunshine.mean)
			_, out[i][varHumidity][s] = logitNormal(rhMeans[s]/100, humid.sd[s]/100)
		}
	}
	return out
}

// stateMeans returns the mean of dry and of wet days, whatever the day before.
func (e element) stateMeans(v int, m *month) (out [states]float64) {
	means := e.means(v, m.wetShare)
	for s, chance := range []float64{
		dry: m.wetShare * (1 - m.persistence), // of a wet day before, by the chain run backwards
		wet: m.wetShare + m.persistence*(1-m.wetShare),
	} {
		out[s] = means[spellOf(s == wet, false)]*(1-chance) + means[spellOf(s == wet, true)]*chance
	}
	return out
}
