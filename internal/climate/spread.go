package climate

import "math"

// place holds what the normals of a place say of its kind of climate.
type placeKind struct {
	yearRangeC float64     // warmest less coldest month's mean [C]
	dayRangeC  float64     // mean daily range over the year [C]
	coldness   [12]float64 // 0 in the warmest month, 1 in the coldest
}

func placeOf(n *Normals) (p placeKind) {
	low, high := math.Inf(1), math.Inf(-1)
	var mean [12]float64
	for i := range n {
		mean[i] = (n[i].TMinC + n[i].TMaxC) / 2
		low, high = math.Min(low, mean[i]), math.Max(high, mean[i])
		p.dayRangeC += (n[i].TMaxC - n[i].TMinC) / 12
	}
	p.yearRangeC = high - low
	for i := range mean {
		if p.yearRangeC > 0 {
			p.coldness[i] = (high - mean[i]) / p.yearRangeC
		}
	}
	return p
}

const (
	usualPersistence = 0.34
	usualRainShape   = 0.85
	usualSlowRain    = 0.25
)

// wetShareOf estimates the share of wet days from a month's rain.
func wetShareOf(rainMM float64, days int) float64 {
	perDay := rainMM / float64(days)
	if perDay <= 0 {
		return 0
	}
	most := perDay / (WetDayMM + 0.5)
	return math.Min(most, 0.9*(1-math.Exp(-0.34*math.Pow(perDay, 0.75))))
}

// spread fills in contrasts, spreads and correlations of a month.
func (p *placeKind) spread(m *month, i int) {
	w := p.coldness[i]
	sdMin := 1.1 * (1.35 + 0.055*p.yearRangeC + w*(1+0.065*p.yearRangeC+0.22*(p.dayRangeC-6)))
	sdMax := 1.1 * (1.5 + 0.05*p.yearRangeC + w*(0.7+0.065*p.yearRangeC+0.15*(p.dayRangeC-6)))
	const r = 0.6
	sdMean := math.Sqrt(sdMin*sdMin+sdMax*sdMax+2*r*sdMin*sdMax) / 2
	e := &m.elements
	e[varMean] = element{contrast: -0.5 + 3*(w-0.5), sd: [states]float64{sdMean, sdMean}, slow: 0.08}
	e[varRange] = element{contrast: -0.3, sd: [states]float64{0.4, 0.45}, slow: 0.05}
	e[varSun] = element{contrast: -0.4, sd: [states]float64{0.4, 0.5}, slow: 0.05}
	e[varHumidity] = element{contrast: 6, sd: [states]float64{9, 7}, slow: 0.1}
	e[varWind] = element{contrast: 0.15, sd: [states]float64{0.45, 0.45}, slow: 0.05}
	for a := range m.same {
		for b := range m.same {
			m.same[a][b] = usualSame[a][b]
			m.before[a][b] = usualBefore[a][b]
		}
	}
}

var usualSame = matrix{
	{1, 0, 0, 0, 0},
	{0, 1, 0.6, -0.3, -0.2},
	{0, 0.6, 1, -0.4, -0.2},
	{0, -0.3, -0.4, 1, 0},
	{0, -0.2, -0.2, 0, 1},
}

var usualBefore = matrix{
	{0.75, 0, 0, 0, 0},
	{0, 0.3, 0.15, -0.1, -0.1},
	{0, 0.15, 0.2, -0.1, 0},
	{0, -0.1, -0.1, 0.4, 0},
	{0, -0.1, 0, 0, 0.4},
}

// slowRoot is the root of the correlations of the slow departures.
func slowRoot() (l [slowElements][slowElements]float64) {
	for i := range l {
		l[i][i] = 1
	}
	return l
}
