package station

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
)

// enoughOfHour is the share of an hour that must be covered for a reading to stand
// for it (judgement: a station that writes every ten minutes may miss two).
const enoughOfHour = 0.6

// hourSums sums readings to the hours of a site's clock, in whichever order they
// come. An hour that the clock repeats is both together.
type hourSums struct {
	clock Clock
	at    map[int]*hourSum // by hours since 1970-01-01 00:00 of the clock
}

// hourSum is one hour so far.
type hourSum struct {
	row                          int
	temp, humid, dew, rain, wind weighted
}

func newHourSums(clock Clock) *hourSums {
	if clock == nil {
		clock = func(int64) int64 { return 0 }
	}
	return &hourSums{clock: clock, at: map[int]*hourSum{}}
}

// add takes a reading to the hour in which the middle of its interval lies. One that
// stands for more than an hour tells nothing of any one hour.
func (s *hourSums) add(r *Reading) {
	if r.Seconds > 3600 {
		return
	}
	middle := r.At - r.Seconds/2
	at := floorDiv(int(middle+s.clock(middle)), 3600)
	h := s.at[at]
	if h == nil {
		h = &hourSum{row: r.Row}
		s.at[at] = h
	}
	h.temp.add(r.TempC, r.Seconds)
	h.humid.add(r.HumidityPct, r.Seconds)
	h.dew.add(r.DewC, r.Seconds)
	h.wind.add(r.WindMS, r.Seconds)
	if !math.IsNaN(r.RainMM) { // a sum already, not a rate
		h.rain.sum += r.RainMM
		h.rain.seconds += float64(r.Seconds)
	}
}

// hours are those whose temperature is known, in order; none where no day has as
// many of them as a day must have to count, since no rule can be told by so few.
func (s *hourSums) hours() []climate.Hour {
	out := s.all()
	perDay := map[cal.Date]int{}
	most := 0
	for i := range out {
		perDay[out[i].Date]++
		most = max(most, perDay[out[i].Date])
	}
	if float64(most) < 24*enoughOfDay {
		return nil
	}
	return out
}

// all are those whose temperature is known, in order.
func (s *hourSums) all() []climate.Hour {
	out := make([]climate.Hour, 0, len(s.at))
	for at, sum := range s.at {
		if h := sum.hour(at); !math.IsNaN(h.TempC) {
			out = append(out, h)
		}
	}
	slices.SortFunc(out, func(a, b climate.Hour) int { return a.At() - b.At() })
	return out
}

// hour is the hour as a station would have recorded it.
func (h *hourSum) hour(at int) climate.Hour {
	date := floorDiv(at, 24)
	out := climate.Hour{Date: cal.Date(date), Hour: at - 24*date, Row: h.row,
		TempC: h.temp.hourly(), HumidityPct: h.humid.hourly(), WindMS: h.wind.hourly(), RainMM: math.NaN()}
	if math.IsNaN(out.HumidityPct) {
		out.HumidityPct = rounded(humidityOf(out.TempC, h.dew.hourly()))
	}
	if h.rain.seconds >= enoughOfHour*3600 {
		out.RainMM = rounded(h.rain.sum)
	}
	return out
}

// hourly is the mean over an hour of which enough was measured; else NaN.
func (w weighted) hourly() float64 {
	if w.seconds < enoughOfHour*3600 {
		return math.NaN()
	}
	return rounded(w.sum / w.seconds)
}

// humidityOf is the relative humidity [%] of air of a temperature and a dew point
// [C], NaN where either is; never above 100 (FAO-56 eq. 10 and 11).
func humidityOf(tempC, dewC float64) float64 {
	return math.Min(100, 100*climate.SaturationKPa(dewC)/climate.SaturationKPa(tempC))
}

// dropDoubtfulHours leaves out the hours of days whose temperatures are doubtful.
func (f *Found) dropDoubtfulHours(doubtful map[cal.Date]bool) {
	if len(doubtful) > 0 {
		f.Hours = slices.DeleteFunc(slices.Clone(f.Hours), func(h climate.Hour) bool { return doubtful[h.Date] })
	}
}
