package climate

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// maxMissingInMonth is how many days of a month may be missing for its mean or
// sum to count.
const maxMissingInMonth = 3

// sums gathers the known values of one quantity in one month of the year.
type sums struct{ sum, n float64 }

func (s *sums) add(m Maybe) {
	if m.Known {
		s.sum, s.n = s.sum+m.Value, s.n+1
	}
}

func (s sums) mean() Maybe {
	if s.n == 0 {
		return Maybe{}
	}
	return Is(s.sum / s.n)
}

// NormalsOf returns the monthly means of a record. Temperatures are means of all
// known days of sound months; rain is the mean of the months with at most three
// days missing, scaled to full length. Every month must have some of both
// temperatures; rain that was never measured is taken as none.
func NormalsOf(r *Record) (Normals, error) {
	var n Normals
	var tMin, tMax, sunH, rad, rh, wind [12]sums
	for _, o := range r.Days {
		m := o.Date.Month() - 1
		tMin[m].add(o.TMinC)
		tMax[m].add(o.TMaxC)
		sunH[m].add(o.SunH)
		rad[m].add(o.RadiationMJ)
		rh[m].add(o.humidity())
		wind[m].add(o.WindMS)
	}
	rain := monthlyRain(r)
	var faults fault.List
	for i := range n {
		if tMin[i].n == 0 || tMax[i].n == 0 {
			faults = append(faults, fault.New(fault.Invalid, "climate.month_unknown", words.Args{"month": i + 1}))
			continue
		}
		n[i] = MonthNormal{
			TMinC: tMin[i].mean().Value, TMaxC: tMax[i].mean().Value, RainMM: rain[i].mean().Value,
			SunH: sunH[i].mean(), RadiationMJ: rad[i].mean(), HumidityPct: rh[i].mean(), WindMS: wind[i].mean(),
		}
	}
	if len(faults) > 0 {
		return Normals{}, faults
	}
	return n, nil
}

// humidity is the day's mean relative humidity: measured, else from the dew
// point.
func (o *Observation) humidity() Maybe {
	if o.HumidityPct.Known || !o.DewC.Known || !o.TMinC.Known || !o.TMaxC.Known {
		return o.HumidityPct
	}
	return Is(HumidityFromDew(o.DewC.Value, o.TMinC.Value, o.TMaxC.Value))
}

// monthlyRain returns the mean sum of each month of the year.
func monthlyRain(r *Record) (out [12]sums) {
	for _, t := range rainTotals(r) {
		out[t.month-1].add(Is(t.mm))
	}
	return out
}

// rainTotal is the rain of one month of one year.
type rainTotal struct {
	year, month int
	mm          float64
}

// rainTotals returns the rain of every month with at most three days missing,
// scaled to full length.
func rainTotals(r *Record) (out []rainTotal) {
	year, month, days, sum := 0, 0, 0, 0.0
	flush := func() {
		if month == 0 {
			return
		}
		full := int(cal.Of(year, month+1, 1) - cal.Of(year, month, 1))
		if days >= full-maxMissingInMonth {
			out = append(out, rainTotal{year, month, sum * float64(full) / float64(days)})
		}
	}
	for _, o := range r.Days {
		y, m, _ := o.Date.YMD()
		if y != year || m != month {
			flush()
			year, month, days, sum = y, m, 0, 0
		}
		if o.RainMM.Known {
			days, sum = days+1, sum+o.RainMM.Value
		}
	}
	flush()
	return out
}
