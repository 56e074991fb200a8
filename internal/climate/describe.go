package climate

import (
	"garner/internal/cal"
	"garner/internal/sun"
)

// Description sums up a record.
type Description struct {
	First, Last       cal.Date
	Days              int // calendar days from first to last
	Years             int // whole years that can be replayed
	Normals           Normals
	NormalsKnown      bool // false when a month is missing altogether
	Missing           Missing
	LastSpringFrost   FrostDates
	FirstAutumnFrost  FrostDates
	FrostYears        int     // years with enough days to tell
	FrostFreeYears    int     // of those, years without a frost
	DegreeDaysBase5C  float64 // mean year, single sine [C d]
	DegreeDaysBase10C float64
}

// Missing counts the days from first to last on which a value is not known.
type Missing struct {
	TMin, TMax, Rain, Sun, Radiation, Humidity, Wind int
}

// FrostC is the temperature at or below which a night counts as a frost [C].
const FrostC = 0

// Describe sums up a record: normals, frost dates, degree-days (single sine,
// Baskerville & Emin 1969), what is missing.
func Describe(r *Record, loc sun.Location) Description {
	var d Description
	if len(r.Days) == 0 {
		return d
	}
	d.First, d.Last = r.Days[0].Date, r.Days[len(r.Days)-1].Date
	d.Days = int(d.Last-d.First) + 1
	d.Years = yearsOnFile(r)
	d.Missing = missingIn(r, d.Days)
	if n, err := NormalsOf(r); err == nil {
		d.Normals, d.NormalsKnown = n, true
	}
	f := FrostsOf(r, FrostC, loc.LatitudeDeg)
	d.LastSpringFrost, d.FirstAutumnFrost = f.LastSpring, f.FirstAutumn
	d.FrostYears, d.FrostFreeYears = f.Years, f.Without
	d.DegreeDaysBase5C = meanYearDegreeDays(r, 5)
	d.DegreeDaysBase10C = meanYearDegreeDays(r, 10)
	return d
}

func missingIn(r *Record, days int) Missing {
	m := Missing{days, days, days, days, days, days, days}
	for i := range r.Days {
		o := &r.Days[i]
		for _, f := range []struct {
			count *int
			value Maybe
		}{
			{&m.TMin, o.TMinC}, {&m.TMax, o.TMaxC}, {&m.Rain, o.RainMM}, {&m.Sun, o.SunH},
			{&m.Radiation, o.RadiationMJ}, {&m.Humidity, o.humidity()}, {&m.Wind, o.WindMS},
		} {
			if f.value.Known {
				*f.count--
			}
		}
	}
	return m
}

// meanYearDegreeDays returns a mean year's degree-days: the mean of the known
// days of each month, times its length.
func meanYearDegreeDays(r *Record, baseC float64) float64 {
	var months [12]sums
	for i := range r.Days {
		o := &r.Days[i]
		if o.TMinC.Known && o.TMaxC.Known {
			months[o.Date.Month()-1].add(Is(DegreeDaysSine(o.TMinC.Value, o.TMaxC.Value, baseC)))
		}
	}
	total := 0.0
	for i, m := range months {
		if i == 1 {
			total += m.mean().Value * 28.2425
			continue
		}
		total += m.mean().Value * float64(cal.DaysInMonth(i+1))
	}
	return total
}
