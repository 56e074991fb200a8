package risk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
)

// Coming is when one event of a rule that sums warmth comes in one growing year, in
// each future.
type Coming struct {
	Event *Event
	Year  cal.Date   // first day of the growing year
	Dates []cal.Date // by future; None where it does not come in that year
}

// Comings runs a rule that sums warmth over the days of many futures, all from the
// same day on, which is the first of a growing year. They come in the order of the
// years and in each of the sums.
func (r *Rule) Comings(futures [][]climate.Day, first cal.Date, o Options) []Coming {
	var out []Coming
	at := map[eventYear]int{}
	for f, days := range futures {
		for _, x := range r.Fired(OfDays(first, days), o) {
			k := eventYear{x.Event, YearStart(x.Date, o.South)}
			if _, known := at[k]; !known {
				at[k] = len(out)
				out = append(out, Coming{Event: r.event(x.Event), Year: k.year, Dates: slices.Repeat([]cal.Date{cal.None}, len(futures))})
			}
			out[at[k]].Dates[f] = x.Date
		}
	}
	slices.SortStableFunc(out, func(a, b Coming) int {
		if a.Year != b.Year {
			return int(a.Year - b.Year)
		}
		return r.place(a.Event) - r.place(b.Event)
	})
	return out
}

type eventYear struct {
	event string
	year  cal.Date
}

func (r *Rule) event(name string) *Event {
	for i := range r.Events {
		if r.Events[i].Name == name {
			return &r.Events[i]
		}
	}
	return nil
}

func (r *Rule) place(e *Event) int {
	return slices.IndexFunc(r.Events, func(o Event) bool { return o.Name == e.Name })
}

// Odds is the share of the futures in which it comes.
func (c *Coming) Odds() float64 {
	n := 0
	for _, d := range c.Dates {
		if d.IsSet() {
			n++
		}
	}
	return float64(n) / float64(max(1, len(c.Dates)))
}

// Between is the share of the futures in which it comes on a day from one to before
// another.
func (c *Coming) Between(from, until cal.Date) float64 {
	n := 0
	for _, d := range c.Dates {
		if d.IsSet() && d >= from && d < until {
			n++
		}
	}
	return float64(n) / float64(max(1, len(c.Dates)))
}

// Quantile is the day by which it has come in a share p of the futures, 0-1; None
// where it comes in fewer.
func (c *Coming) Quantile(p float64) cal.Date {
	var known []cal.Date
	for _, d := range c.Dates {
		if d.IsSet() {
			known = append(known, d)
		}
	}
	slices.Sort(known)
	if i := int(p * float64(len(c.Dates))); i < len(known) {
		return known[i]
	}
	return cal.None
}

// How long insects are about where a source gives but one day of a flight [d].
// judgement, no source: some five weeks from its start, two weeks on either side of
// its peak.
const (
	flightDays = 35
	peakSide   = 14
)

// Flight is one flight, or generation, of a growing year: when insects are about, in
// each future.
type Flight struct {
	Number int
	Year   cal.Date
	From   []cal.Date // by future; None where it does not come
	Until  []cal.Date // the day after
}

// Flights are the times in which insects are about, from the comings of a rule's
// events.
func Flights(comings []Coming) []Flight {
	var out []Flight
	for i := range comings {
		c := &comings[i]
		at := slices.IndexFunc(out, func(f Flight) bool { return f.Number == c.Event.Flight && f.Year == c.Year })
		if at < 0 {
			at = len(out)
			none := slices.Repeat([]cal.Date{cal.None}, len(c.Dates))
			out = append(out, Flight{Number: c.Event.Flight, Year: c.Year, From: none, Until: slices.Clone(none)})
		}
		f := &out[at]
		for k, d := range c.Dates {
			if d.IsSet() {
				f.widen(k, d, c.Event.Part)
			}
		}
	}
	return out
}

// widen takes an event of the flight into its time in one future. A published end is
// the end, whatever else would follow.
func (f *Flight) widen(future int, d cal.Date, part FlightPart) {
	from, until := d, d+flightDays
	switch part {
	case FlightPeak:
		from, until = d-peakSide, d+peakSide
	case FlightEnd:
		from, until = d-flightDays, d
	}
	switch known := f.From[future].IsSet(); {
	case !known:
		f.From[future], f.Until[future] = from, until
	case part == FlightEnd:
		f.Until[future] = d
	case part == FlightPeak: // its start is known
		f.Until[future] = max(f.Until[future], until)
	}
}

// Stay is a time in which a crop is open to insects.
type Stay struct{ From, Until cal.Date }

// meets is how many days together make a flight one that a sowing meets. judgement:
// a week of flies lays eggs enough.
const meets = 7

// Meets is the share of the futures in which a flight meets what is open over some
// stays: for a week of it, or for all of a shorter stay.
func (f *Flight) Meets(stays []Stay) float64 {
	n := 0
	for i := range f.From {
		if f.From[i].IsSet() && f.meetsIn(i, stays) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(f.From)))
}

func (f *Flight) meetsIn(future int, stays []Stay) bool {
	days, open := 0, 0
	for _, s := range stays {
		days += int(max(0, min(s.Until, f.Until[future])-max(s.From, f.From[future])))
		open += int(s.Until - s.From)
	}
	return days > 0 && days >= min(meets, open)
}

// Quantiles are the days by which the flight has begun and by which it is over in
// shares of the futures; None where it comes in fewer.
func (f *Flight) Quantiles(begun, over float64) (from, until cal.Date) {
	a, b := Coming{Dates: f.From}, Coming{Dates: f.Until}
	return a.Quantile(begun), b.Quantile(over)
}

// Sums is the warmth summed toward an event by the end of each day from the first on
// [C d], anew in every growing year; 0 before its start.
func (e *Event) Sums(days []climate.Day, first cal.Date, o Options) []float64 {
	a := &asked{since: o.Since, south: o.South}
	out := make([]float64, len(days))
	start, sum := cal.None, 0.0
	var next cal.Date // the growing year after
	for i := range days {
		d := first + cal.Date(i)
		if i == 0 || d >= next {
			next = NextYear(d, o.South)
			if s := a.start(e, d); s != start {
				start, sum = s, 0
			}
		}
		if start.IsSet() && d >= start {
			sum += e.Method.DegreeDays(days[i].TMinC, days[i].TMaxC, e.BaseC, e.UpperC)
		}
		out[i] = sum
	}
	return out
}
