package climate

import (
	"math"

	"garner/internal/cal"
)

// trend is the change of the two extremes from year to year, by month.
type trend struct {
	perYear [2]yearCurve // of tmin and tmax [C a year]
}

const (
	// trendPriorSD is the spread of slopes between places [C a year] against
	// which a record's own slope is weighed. judgement: twice the warming of
	// recent decades on land, so that a long record keeps its slope and a short
	// one, whose slope is mostly chance, nearly loses it.
	trendPriorSD = 0.04
	// seasonPriorSD is the same for how far a month's slope may stand from the
	// year's. judgement.
	seasonPriorSD = 0.02
)

// trendOf estimates a record's own slopes.
func trendOf(r *Record) (t trend) {
	means := yearlyMonthMeans(r)
	for v := range t.perYear {
		var slopes, weights [12]float64
		yearSlope, yearWeight := 0.0, 0.0
		for m := range 12 {
			slope, se := lineSlope(means[v][m])
			if math.IsInf(se, 1) {
				continue
			}
			slopes[m], weights[m] = slope, 1/(se*se)
			yearSlope += slope / (se * se)
			yearWeight += 1 / (se * se)
		}
		if yearWeight == 0 {
			continue
		}
		yearSlope /= yearWeight
		// Months share weather: the year's slope is worth less than twelve free ones.
		kept := yearSlope * shrink(trendPriorSD, yearWeight/2)
		for m := range slopes {
			slopes[m] = kept + (slopes[m]-yearSlope)*shrink(seasonPriorSD, weights[m])
		}
		t.perYear[v] = smooth(slopes)
	}
	return t
}

// shrink is the share of an estimate that is kept against a prior.
func shrink(priorSD, weight float64) float64 {
	return priorSD * priorSD / (priorSD*priorSD + 1/math.Max(weight, 1e-12))
}

// point is a month's mean in a year.
type point struct{ year, value float64 }

// lineSlope returns the least-squares slope and its standard error; infinite
// with fewer than five points.
func lineSlope(points []point) (slope, se float64) {
	n := float64(len(points))
	if n < 5 {
		return 0, math.Inf(1)
	}
	mx, my := 0.0, 0.0
	for _, p := range points {
		mx, my = mx+p.year/n, my+p.value/n
	}
	sxx, sxy, syy := 0.0, 0.0, 0.0
	for _, p := range points {
		sxx += (p.year - mx) * (p.year - mx)
		sxy += (p.year - mx) * (p.value - my)
		syy += (p.value - my) * (p.value - my)
	}
	slope = sxy / sxx
	rest := math.Max(syy-slope*sxy, 1e-6)
	return slope, math.Sqrt(rest / (n - 2) / sxx)
}

// yearlyMonthMeans returns, for tmin and tmax, the means of every month of the
// record with at most three days missing.
func yearlyMonthMeans(r *Record) (out [2][12][]point) {
	year, month := 0, 0
	var s [2]sums
	flush := func() {
		if month == 0 {
			return
		}
		full := float64(cal.Of(year, month+1, 1) - cal.Of(year, month, 1))
		for v := range s {
			if s[v].n >= full-maxMissingInMonth {
				out[v][month-1] = append(out[v][month-1], point{float64(year), s[v].mean().Value})
			}
		}
	}
	for _, o := range r.Days {
		y, m, _ := o.Date.YMD()
		if y != year || m != month {
			flush()
			year, month, s = y, m, [2]sums{}
		}
		s[0].add(o.TMinC)
		s[1].add(o.TMaxC)
	}
	flush()
	return out
}

// mostAhead is how many years past its last one a record's slope is followed.
// judgement: a straight line says little of the decades after it.
const mostAhead = 10

// shift moves days from first on to the level of a year.
func (t *trend) shift(days []Day, first cal.Date, level int) {
	year, month, day := first.YMD()
	for i := range days {
		at := dayIndex(month, day)
		ahead := float64(level - year)
		low, high := t.perYear[0][at]*ahead, t.perYear[1][at]*ahead
		// The range may narrow but never turn round.
		if room := days[i].TMaxC - days[i].TMinC; low-high > room {
			middle := (low + high) / 2
			low, high = middle+room/2, middle-room/2
		}
		days[i].TMinC += low
		days[i].TMaxC += high
		year, month, day = nextDay(first+cal.Date(i), year, month, day)
	}
}

// nextDay returns the day after a date of which the parts are known.
func nextDay(d cal.Date, year, month, day int) (int, int, int) {
	if day < 28 {
		return year, month, day + 1
	}
	return (d + 1).YMD()
}
