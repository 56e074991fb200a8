package climate

import (
	"math"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/sun"
)

// placeKind is what the normals and the site say of a place's kind of climate.
type placeKind struct {
	yearRangeC float64     // warmest less coldest month's mean [C]
	dayRangeC  float64     // mean daily range over the year [C]
	coldness   [12]float64 // 0 in the warmest month, 1 in the coldest
	regimes    []weightedRegime
}

// weightedRegime is a set of regional figures and how much they count here.
type weightedRegime struct {
	weight float64
	figures
}

func placeOf(n *Normals, loc sun.Location) (p placeKind) {
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
	p.regimes = regimesAt(loc)
	return p
}

// regional returns a regional figure, blended where regions meet.
func (p *placeKind) regional(name string) (v float64) {
	for _, r := range p.regimes {
		v += r.weight * r.get(name)
	}
	return v
}

// spread fills in what normals do not hold: contrasts between wet and dry days,
// spreads, slow shares, correlations and the shape of the rain of month i.
// Expects the month's temperatures, rain and radiation to be there.
func (p *placeKind) spread(m *month, i int) {
	w, e := p.coldness[i], &m.elements
	p.rain(m, i)
	e[varMean] = element{mean: (m.tMinC + m.tMaxC) / 2, bends: usualBends("mean", w)}
	p.meanSpread(&e[varMean], m, w)
	e[varRange] = element{mean: m.tMaxC - m.tMinC, bends: usualBends("range", w)}
	p.rangeSpread(&e[varRange], w)
	skySpread(&e[varSun])
	humiditySpread(&e[varHumidity], w)
	windSpread(&e[varWind], w)
	for v, name := range []string{"slow_mean", "slow_range", "slow_sun", "slow_humidity", "slow_wind"} {
		e[v].slow = everywhere().get(name)
	}
	p.correlations(m, w)
}

func (p *placeKind) rangeSpread(e *element, w float64) {
	all := everywhere()
	e.contrast = all.get("range_contrast") + all.get("range_contrast_per_coldness_squared")*w*w
	e.after = all.get("range_after") + all.get("range_after_per_coldness_squared")*w*w
	for s, name := range []string{dry: "range_cv_dry", wet: "range_cv_wet"} {
		cv := p.regional(name) + p.regional(name+"_per_c")*e.mean + p.regional("range_cv_per_coldness")*w
		e.sd[s] = num.Clamp(cv, 0.2, 0.6)
	}
}

func skySpread(e *element) {
	all := everywhere()
	e.contrast, e.after = all.get("sun_contrast"), all.get("sun_after")
	for s, name := range []string{dry: "sun_cv_dry", wet: "sun_cv_wet"} {
		e.sd[s] = num.Clamp(all.get(name)+all.get(name+"_per_share")*e.mean, 0.1, 0.9)
	}
}

func humiditySpread(e *element, w float64) {
	all := everywhere()
	e.contrast = all.get("humidity_contrast_pct") + all.get("humidity_contrast_pct_per_coldness")*w
	e.after = all.get("humidity_after_pct") + all.get("humidity_after_pct_per_coldness")*w
	e.sd[dry] = all.get("humidity_sd_dry_pct")
	e.sd[wet] = num.Clamp(all.get("humidity_sd_wet_pct")+all.get("humidity_sd_wet_pct_per_pct")*e.mean, 4, 14)
}

func windSpread(e *element, w float64) {
	all := everywhere()
	e.contrast = all.get("wind_contrast") + all.get("wind_contrast_per_coldness")*w
	e.after = all.get("wind_after") + all.get("wind_after_per_coldness")*w
	for s, name := range []string{dry: "wind_cv_dry", wet: "wind_cv_wet"} {
		e.sd[s] = all.get(name) + all.get(name+"_per_coldness")*w
	}
}

// usualBends are the bends of an element at a coldness.
func usualBends(name string, w float64) (out [states]bend) {
	all := everywhere()
	strength := func(state, side string) float64 {
		key := name + "_bend_" + state + "_" + side
		return math.Max(0, all.get(key)+all.get(key+"_per_coldness")*w)
	}
	for s, state := range []string{dry: "dry", wet: "wet"} {
		out[s] = newBend(strength(state, "low"), strength(state, "high"))
	}
	return out
}

// meanSpread sets the spread of the daily mean and what sets wet days apart,
// such that the spread over all days is the estimated one.
func (p *placeKind) meanSpread(e *element, m *month, w float64) {
	all := everywhere()
	sd := p.regional("sd_mean_c") + p.regional("sd_mean_per_year_range")*p.yearRangeC +
		p.regional("sd_mean_per_month_range")*(m.tMaxC-m.tMinC)
	above := math.Max(0, p.dayRangeC-p.regional("day_range_above_c"))
	cold := p.regional("sd_cold_c") + p.regional("sd_cold_per_year_range")*p.yearRangeC +
		p.regional("sd_cold_per_day_range_above")*above
	sd = math.Max(1, sd+math.Max(0, cold)*math.Pow(w, p.regional("cold_power")))
	r := all.get("sd_wet_over_dry") + all.get("sd_wet_over_dry_per_coldness")*w
	c := all.get("mean_contrast_sd") + all.get("mean_contrast_sd_per_coldness")*w +
		all.get("mean_contrast_sd_per_coldness_squared")*w*w
	a := all.get("mean_after_sd") + all.get("mean_after_sd_per_coldness")*w +
		all.get("mean_after_sd_per_coldness_squared")*w*w
	// Variance over all days = that within wet and dry days, (r s)^2 and s^2, and
	// that between spells; yesterday's state goes with today's by the persistence.
	share := m.wetShare
	between := share * (1 - share) * (c*c + a*a + 2*m.persistence*c*a)
	s := math.Sqrt((1 - between) / (share*r*r + 1 - share))
	e.contrast, e.after = c*sd, a*sd
	e.sd = [states]float64{dry: s * sd, wet: r * s * sd}
}

// rain estimates the chain and the amounts of month i from its sum.
func (p *placeKind) rain(m *month, i int) {
	all := everywhere()
	m.rainShape, m.slowRain = all.get("rain_shape"), all.get("slow_rain")
	daily := m.rainMM / float64(cal.DaysInMonth(i+1))
	mean := (m.tMinC + m.tMaxC) / 2
	amount := all.get("wet_amount_mm") + all.get("wet_amount_per_daily_mm")*daily +
		all.get("wet_amount_mm_per_c_above_5")*math.Max(0, mean-5)
	m.wetShare = math.Min(daily/amount, 0.95)
	m.persistence = all.get("persistence") + all.get("persistence_per_coldness")*p.coldness[i] +
		all.get("persistence_per_wet_share")*m.wetShare
}

// correlations blends the winter and summer matrices by the coldness and sets
// the one between mean and range, which goes by the continent and the clouds.
func (p *placeKind) correlations(m *month, w float64) {
	usual := usualCorrelations()
	for a := range m.same {
		for b := range m.same {
			m.same[a][b] = usual.same[0][a][b] + w*(usual.same[1][a][b]-usual.same[0][a][b])
			m.before[a][b] = usual.before[0][a][b] + w*(usual.before[1][a][b]-usual.before[0][a][b])
		}
	}
	r := p.regional("mean_range_r") + p.regional("mean_range_r_per_year_range")*p.yearRangeC +
		p.regional("mean_range_r_per_sky_share")*m.elements[varSun].mean + p.regional("mean_range_r_per_coldness")*w +
		p.regional("mean_range_r_per_month_range")*m.elements[varRange].mean
	r = num.Clamp(r, -0.5, 0.55)
	shift := r - m.same[varMean][varRange]
	m.same[varMean][varRange], m.same[varRange][varMean] = r, r
	m.before[varMean][varRange] += shift * m.before[varRange][varRange]
	m.before[varRange][varMean] += shift * m.before[varRange][varRange]
	lag := p.regional("lag1_scale")
	for a := range m.before {
		for b := range m.before {
			m.before[a][b] *= lag
		}
	}
	m.slowRoot = slowRoot(&m.same)
	var shares [variables]float64
	for v := range shares {
		shares[v] = m.elements[v].slow
	}
	m.same, m.before = withoutSlow(m.same, m.before, &shares, &m.slowRoot)
}

// slowRoot is the root of the correlations of the slow departures: those of the
// same day, since what makes a day warm or clear makes a month so; that of rain
// goes with none.
func slowRoot(same *matrix) (l slowMatrix) {
	root := same.root()
	for i := range root {
		copy(l[i][:], root[i][:])
	}
	l[variables][variables] = 1
	return l
}
