package climate

import (
	"math"

	"garner/internal/cal"
)

// monthStatistics sums up one month of the year of a daily series.
type monthStatistics struct {
	tMin, tMax, rain, rad     float64 // means; rain a month
	tMinMonths, tMaxMonths    float64 // sd of monthly means
	rainMonths                float64 // sd of monthly sums
	tMinDays, tMaxDays        float64 // sd of daily values about the yearly curve
	tMinLag, tMaxLag, tMinMax float64 // correlations of residuals
	wet, wetAfterWet          float64
	years                     float64
}

// recordOf makes a record of a run of days.
func recordOf(first cal.Date, days []Day) *Record {
	r := &Record{Days: make([]Observation, len(days))}
	for i, d := range days {
		r.Days[i] = Observation{Date: first + cal.Date(i), TMinC: Is(d.TMinC), TMaxC: Is(d.TMaxC),
			RainMM: Is(d.RainMM), RadiationMJ: Is(d.RadiationMJ), HumidityPct: Is(d.HumidityPct), WindMS: Is(d.WindMS)}
	}
	return r
}

func statisticsOf(r *Record) (out [12]monthStatistics) {
	n, err := NormalsOf(r)
	if err != nil {
		panic(err)
	}
	var low, high [12]float64
	for i := range n {
		low[i], high[i] = n[i].TMinC, n[i].TMaxC
		out[i].tMin, out[i].tMax, out[i].rain, out[i].rad = low[i], high[i], n[i].RainMM, n[i].RadiationMJ.Value
	}
	lowCurve, highCurve := smooth(low), smooth(high)
	var ll, hh, lh [12]product
	var wetDays [12]moments
	var afterWet [12]moments
	for i, o := range r.Days {
		_, m, d := o.Date.YMD()
		at := dayIndex(m, d)
		x, y := residual(o.TMinC, lowCurve[at]), residual(o.TMaxC, highCurve[at])
		lh[m-1].add(x, y)
		if o.RainMM.Known {
			v := 0.0
			if o.RainMM.Value >= WetDayMM {
				v = 1
			}
			wetDays[m-1].add(v)
			if i > 0 && r.Days[i-1].RainMM.Known && r.Days[i-1].RainMM.Value >= WetDayMM && r.Days[i-1].Date == o.Date-1 {
				afterWet[m-1].add(v)
			}
		}
		if i == 0 || r.Days[i-1].Date != o.Date-1 {
			continue
		}
		_, pm, pd := r.Days[i-1].Date.YMD()
		before := dayIndex(pm, pd)
		ll[m-1].add(x, residual(r.Days[i-1].TMinC, lowCurve[before]))
		hh[m-1].add(y, residual(r.Days[i-1].TMaxC, highCurve[before]))
	}
	means := yearlyMonthMeans(r)
	var rain [12]moments
	for _, t := range rainTotals(r) {
		rain[t.month-1].add(t.mm)
	}
	for i := range out {
		s := &out[i]
		s.tMinLag, _ = ll[i].correlation()
		s.tMaxLag, _ = hh[i].correlation()
		s.tMinMax, _ = lh[i].correlation()
		s.tMinDays = math.Sqrt(lh[i].xx/lh[i].n - math.Pow(lh[i].x/lh[i].n, 2))
		s.tMaxDays = math.Sqrt(lh[i].yy/lh[i].n - math.Pow(lh[i].y/lh[i].n, 2))
		s.tMinMonths, s.tMaxMonths = sdOf(means[0][i]), sdOf(means[1][i])
		s.years = float64(len(means[0][i]))
		s.rainMonths = rain[i].sd()
		s.wet, s.wetAfterWet = wetDays[i].mean(), afterWet[i].mean()
	}
	return out
}

func residual(m Maybe, level float64) float64 {
	if !m.Known {
		return math.NaN()
	}
	return m.Value - level
}

func sdOf(points []point) float64 {
	var m moments
	for _, p := range points {
		m.add(p.value)
	}
	return m.sd()
}

// pooled is the root mean square over the months.
func pooled(s *[12]monthStatistics, of func(*monthStatistics) float64) float64 {
	sum := 0.0
	for i := range s {
		sum += of(&s[i]) * of(&s[i]) / 12
	}
	return math.Sqrt(sum)
}
