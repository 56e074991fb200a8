package climate

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/num"
)

// FrostDates are days that a frost passes in one year of ten (late in spring,
// P90; early in autumn, P10), in half the years, and so on. They are counted in
// days of a common year (1-365), and run past the new year where frost is rare.
// Known is false with fewer than four years that had a frost.
type FrostDates struct {
	P10, P50, P90 cal.MonthDay
	Known         bool
}

// Frosts are a record's first and last frosts.
type Frosts struct {
	LastSpring, FirstAutumn FrostDates
	Years                   int // frost years with at least 355 known minima
	Without                 int // of those, years that had no frost
}

// FrostsOf finds, in each frost year, the first and the last day with a minimum
// at or below a temperature [C], and returns percentiles over the years that
// had one (linear between ranks). A frost year runs from July to June in the
// north and is the calendar year in the south, so that the cold lies in its
// middle.
func FrostsOf(r *Record, thresholdC, latitudeDeg float64) Frosts {
	var f Frosts
	var first, last []float64
	for _, y := range frostYears(r, thresholdC, latitudeDeg) {
		if y.known < minYearDays {
			continue
		}
		f.Years++
		if y.first == cal.None {
			f.Without++
			continue
		}
		first = append(first, float64(y.first-y.start))
		last = append(last, float64(y.last-y.start))
	}
	f.FirstAutumn = frostDates(first, latitudeDeg)
	f.LastSpring = frostDates(last, latitudeDeg)
	return f
}

type frostYear struct {
	start       cal.Date
	known       int
	first, last cal.Date
}

// frostYearStart returns the first day of the frost year that a date is in.
func frostYearStart(d cal.Date, latitudeDeg float64) cal.Date {
	year, month, _ := d.YMD()
	if latitudeDeg < 0 {
		return cal.Of(year, 1, 1)
	}
	if month < 7 {
		year--
	}
	return cal.Of(year, 7, 1)
}

func frostYears(r *Record, thresholdC, latitudeDeg float64) (out []frostYear) {
	for i := range r.Days {
		o := &r.Days[i]
		if !o.TMinC.Known {
			continue
		}
		start := frostYearStart(o.Date, latitudeDeg)
		if len(out) == 0 || out[len(out)-1].start != start {
			out = append(out, frostYear{start: start, first: cal.None})
		}
		y := &out[len(out)-1]
		y.known++
		if o.TMinC.Value <= thresholdC {
			if y.first == cal.None {
				y.first = o.Date
			}
			y.last = o.Date
		}
	}
	return out
}

// minFrostYears is how many years with a frost percentiles need.
const minFrostYears = 4

// frostDates turns days after the start of the frost year into percentiles.
func frostDates(after []float64, latitudeDeg float64) FrostDates {
	if len(after) < minFrostYears {
		return FrostDates{}
	}
	sort.Float64s(after)
	start := cal.MonthDay{Month: 7, Day: 1}.DayOfYear()
	if latitudeDeg < 0 {
		start = 1
	}
	at := func(p float64) cal.MonthDay {
		return cal.MonthDayOf(start + int(num.Quantile(after, p)+0.5))
	}
	return FrostDates{P10: at(0.1), P50: at(0.5), P90: at(0.9), Known: true}
}
