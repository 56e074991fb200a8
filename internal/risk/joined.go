package risk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
)

// OfDays lays daily weather into days without hours. Rules over hours find nothing
// in it.
func OfDays(first cal.Date, days []climate.Day) *Weather {
	w := &Weather{Days: make([]Day, len(days))}
	for i := range days {
		d := &days[i]
		w.Days[i] = Day{Date: first + cal.Date(i), Warm: true, TMinC: d.TMinC, TMaxC: d.TMaxC, MeanC: d.MeanC(), RainMM: d.RainMM}
	}
	return w
}

// Join is the weather from one day to before another out of hours and, on days whose
// hours are not known, out of a daily record, which may be nil. Days made from their
// extremes are marked, and those whose humidity had to be guessed.
func Join(hours []climate.Hour, record *climate.Record, from, until cal.Date) *Weather {
	real := New(within(hours, from, until))
	daily := part(record, from, until)
	made := FromDays(daily)
	guessed := map[cal.Date]bool{}
	for i := range daily.Days {
		o := &daily.Days[i]
		guessed[o.Date] = !o.DewC.Known && !o.HumidityPct.Known
	}
	joined := &Weather{Estimated: true}
	for i, j := 0, 0; i < len(real.Days) || j < len(made.Days); {
		switch {
		case j == len(made.Days) || i < len(real.Days) && real.Days[i].Date < made.Days[j].Date:
			joined.add(real, &real.Days[i], false)
			i++
		case i == len(real.Days) || made.Days[j].Date < real.Days[i].Date:
			joined.add(made, &made.Days[j], true).Guessed = guessed[made.Days[j].Date]
			j++
		default:
			if hourly := &real.Days[i]; hourly.Humid || hourly.Warm && guessed[hourly.Date] {
				joined.add(real, hourly, false)
			} else {
				joined.add(made, &made.Days[j], true).Guessed = guessed[made.Days[j].Date]
			}
			i, j = i+1, j+1
		}
	}
	return joined
}

// add takes a day with its hours over from another record.
func (w *Weather) add(from *Weather, d *Day, made bool) *Day {
	own := *d
	own.Made = made
	own.from = len(w.Hours)
	w.Hours = append(w.Hours, from.of(d)...)
	own.to = len(w.Hours)
	w.Days = append(w.Days, own)
	w.Estimated = w.Estimated && made
	return &w.Days[len(w.Days)-1]
}

// CountedDays is how many days from one to before another count by their hours: the
// temperature of 22 of them is known.
func CountedDays(hours []climate.Hour, from, until cal.Date) int {
	n := 0
	for _, d := range New(within(hours, from, until)).Days {
		if d.Warm {
			n++
		}
	}
	return n
}

// within are the hours from one day to before another.
func within(hours []climate.Hour, from, until cal.Date) []climate.Hour {
	first, end := 0, len(hours)
	for first < end && hours[first].Date < from {
		first++
	}
	for end > first && hours[end-1].Date >= until {
		end--
	}
	return hours[first:end]
}

// part is a daily record from one day to before another.
func part(r *climate.Record, from, until cal.Date) *climate.Record {
	out := &climate.Record{}
	if r == nil {
		return out
	}
	first, end := 0, len(r.Days)
	for first < end && r.Days[first].Date < from {
		first++
	}
	for end > first && r.Days[end-1].Date >= until {
		end--
	}
	out.Days = r.Days[first:end]
	return out
}

// Daily is a daily record together with the days that hours tell and it does not. It
// is the record itself when there are none.
func Daily(record *climate.Record, hours []climate.Hour) *climate.Record {
	known := map[cal.Date]bool{}
	out := &climate.Record{}
	if record != nil {
		out.ID = record.ID
		for i := range record.Days {
			o := &record.Days[i]
			known[o.Date] = o.TMinC.Known && o.TMaxC.Known
		}
	}
	w := New(hours)
	var more []climate.Observation
	for i := range w.Days {
		if d := &w.Days[i]; d.Warm && !known[d.Date] {
			more = append(more, w.observed(d))
		}
	}
	if len(more) == 0 {
		return record
	}
	at := 0
	if record != nil {
		for i := range record.Days {
			o := record.Days[i]
			for at < len(more) && more[at].Date < o.Date {
				out.Days = append(out.Days, more[at])
				at++
			}
			if at < len(more) && more[at].Date == o.Date {
				o.TMinC, o.TMaxC = more[at].TMinC, more[at].TMaxC
				at++
			}
			out.Days = append(out.Days, o)
		}
	}
	out.Days = append(out.Days, more[at:]...)
	return out
}

// observed is a day of hours as a daily record has it.
func (w *Weather) observed(d *Day) climate.Observation {
	o := climate.Observation{Date: d.Date, TMinC: climate.Is(d.TMinC), TMaxC: climate.Is(d.TMaxC)}
	var rain, humid int
	var rainMM, humidity float64
	for _, h := range w.of(d) {
		if !math.IsNaN(h.RainMM) {
			rain++
			rainMM += h.RainMM
		}
		if !math.IsNaN(h.HumidityPct) {
			humid++
			humidity += h.HumidityPct
		}
	}
	if rain >= leastHours {
		o.RainMM = climate.Is(rainMM)
	}
	if humid >= leastHours {
		o.HumidityPct = climate.Is(humidity / float64(humid))
	}
	return o
}
