package climate

import (
	"math"

	"garner/internal/cal"
	"garner/internal/sun"
)

// fitSeries is a record laid out day by day for fitting; NaN where a value is
// not known.
type fitSeries struct {
	month, index []int
	values       [variables][]float64 // mean, range [C], share of the sky, humidity 0-1, wind
	rain         []float64
	blocks       []block
}

// block is the days of one month of one year, from up to before to.
type block struct{ month, from, to int }

// unknownState marks a day whose rain is not known.
const unknownState = -1

// stateAt tells whether day t was dry or wet.
func (f *fitSeries) stateAt(t int) int {
	switch {
	case math.IsNaN(f.rain[t]):
		return unknownState
	case f.rain[t] >= WetDayMM:
		return wet
	}
	return dry
}

// spellAt tells the spell of day t; ok is false where the rain of the day or of
// the day before is not known.
func (f *fitSeries) spellAt(t int) (s spell, ok bool) {
	if t == 0 || f.stateAt(t) == unknownState || f.stateAt(t-1) == unknownState {
		return 0, false
	}
	return spellOf(f.stateAt(t) == wet, f.stateAt(t-1) == wet), true
}

func newFitSeries(r *Record, loc sun.Location) *fitSeries {
	first := r.Days[0].Date
	n := int(r.Days[len(r.Days)-1].Date-first) + 1
	f := &fitSeries{month: make([]int, n), index: make([]int, n), rain: make([]float64, n)}
	for v := range f.values {
		f.values[v] = make([]float64, n)
	}
	y, m, d := first.YMD()
	for t := range n {
		f.month[t], f.index[t] = m-1, dayIndex(m, d)
		for v := range f.values {
			f.values[v][t] = math.NaN()
		}
		f.rain[t] = math.NaN()
		if t == 0 || f.month[t] != f.month[t-1] {
			f.blocks = append(f.blocks, block{month: m - 1, from: t})
		}
		f.blocks[len(f.blocks)-1].to = t + 1
		y, m, d = nextDay(first+cal.Date(t), y, m, d)
	}
	for i := range r.Days {
		f.take(&r.Days[i], int(r.Days[i].Date-first), loc)
	}
	return f
}

// yearly returns the mean of values in a month of the year, year by year, where
// at most three days are missing.
func (f *fitSeries) yearly(values []float64, month int) (means moments) {
	for _, b := range f.blocks {
		if b.month != month {
			continue
		}
		var m moments
		for _, v := range values[b.from:b.to] {
			if !math.IsNaN(v) {
				m.add(v)
			}
		}
		if m.n >= float64(cal.DaysInMonth(month+1)-maxMissingInMonth) {
			means.add(m.mean())
		}
	}
	return means
}

// take lays out one observation.
func (f *fitSeries) take(o *Observation, t int, loc sun.Location) {
	if o.RainMM.Known {
		f.rain[t] = o.RainMM.Value
	}
	if o.TMinC.Known && o.TMaxC.Known && o.TMaxC.Value >= o.TMinC.Value {
		f.values[varMean][t] = (o.TMinC.Value + o.TMaxC.Value) / 2
		f.values[varRange][t] = o.TMaxC.Value - o.TMinC.Value
	}
	if rad := o.radiation(loc); rad.Known {
		low, high := skyBounds(loc, f.index[t]+1)
		f.values[varSun][t] = math.Max(0.005, math.Min(0.995, (rad.Value-low)/(high-low)))
	}
	if h := o.humidity(); h.Known {
		f.values[varHumidity][t] = math.Max(0.05, math.Min(0.995, h.Value/100))
	}
	if o.WindMS.Known {
		f.values[varWind][t] = o.WindMS.Value
	}
}

// radiation is the day's radiation: measured, else from sunshine.
func (o *Observation) radiation(loc sun.Location) Maybe {
	if o.RadiationMJ.Known || !o.SunH.Known {
		return o.RadiationMJ
	}
	doy := o.Date.DayOfYear()
	ra := sun.ExtraterrestrialMJ(loc.LatitudeDeg, doy)
	return Is(sun.AngstromMJ(ra, o.SunH.Value, sun.DaylightH(loc.LatitudeDeg, doy)))
}
