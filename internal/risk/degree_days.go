package risk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
)

// Method is a way of summing the warmth of a day above a base from its extremes.
type Method string

// The methods; package climate has their formulas and sources.
const (
	Average  Method = "average"  // mean of the extremes less the base
	Capped   Method = "capped"   // the same, the maximum held below the upper limit
	Modified Method = "modified" // both held between base and upper limit
	Sine     Method = "sine"     // under a sine wave, cut off at the upper limit
	Triangle Method = "triangle" // under straight lines, cut off at the upper limit
)

// methods are all of them.
var methods = []Method{Average, Capped, Modified, Sine, Triangle}

// DegreeDays is a day's warmth above a base and up to a limit [C d], +Inf for none.
func (m Method) DegreeDays(tMinC, tMaxC, baseC, upperC float64) float64 {
	switch m {
	case Capped:
		return climate.DegreeDays(tMinC, math.Min(tMaxC, upperC), baseC)
	case Modified:
		return climate.DegreeDaysModified(tMinC, tMaxC, baseC, upperC)
	case Sine:
		return climate.DegreeDaysSineUpper(tMinC, tMaxC, baseC, upperC)
	case Triangle:
		return climate.DegreeDaysTriangle(tMinC, tMaxC, baseC, upperC)
	}
	return climate.DegreeDays(tMinC, tMaxC, baseC)
}

// Event is something a pest does when warmth has come to a sum.
type Event struct {
	Name          string // first_flight and the like
	BaseC, UpperC float64
	SumCd         float64
	SpreadCd      float64      // published spread of the sum, 0 where none is
	Flight        int          // which of the year's flights or generations it belongs to, from 1
	Part          FlightPart   // of that flight
	Start         cal.MonthDay // the sum begins here, as in the north; zero: at a sighting
	Method        Method
	Region        string
	Source, URL   string
	Mark          string
}

// FlightPart is what an event is of a flight.
type FlightPart string

// The parts of a flight.
const (
	FlightStart FlightPart = "start"
	FlightPeak  FlightPart = "peak"
	FlightEnd   FlightPart = "end"
)

// mostMissing is how many days a sum may lack before it says nothing.
const mostMissing = 10

// degreeDays fires on the day on which the warmth since an event's start reaches its
// sum. Its value is the sum by then, its event which it is. A year whose record
// lacks more than ten days of the time says nothing.
//
// Source: data/pests.csv.
func degreeDays(a *asked) (out []Reading) {
	for k := range a.Events {
		out = append(out, a.reach(&a.Events[k])...)
	}
	return out
}

// reach follows one event through all growing years of the record. When insects
// were seen flying, the sum is set by them: it goes on from that of the event it
// came nearest to by then, and what comes later is told from there.
func (a *asked) reach(e *Event) (out []Reading) {
	start, sum, days, done := cal.None, 0.0, 0, true
	var next cal.Date // the growing year after
	for i := range a.w.Days {
		d := &a.w.Days[i]
		if i == 0 || d.Date >= next {
			next = NextYear(d.Date, a.south)
			if s := a.start(e, d.Date); s != start {
				start, sum, days, done = s, 0, 0, s == cal.None
			}
		}
		if done || d.Date < start || !d.Warm {
			continue
		}
		days++
		sum += e.Method.DegreeDays(d.TMinC, d.TMaxC, e.BaseC, e.UpperC)
		if d.Date == a.seen {
			if stands := a.nearest(e, sum); stands < e.SumCd {
				sum = stands
			}
		}
		if sum < e.SumCd {
			continue
		}
		done = true
		if missing := int(d.Date-start) + 1 - days; missing <= mostMissing {
			out = append(out, Reading{Date: d.Date, Value: sum, Fired: true, Threshold: e.SumCd, Event: e.Name})
		}
	}
	return out
}

// nearest is the sum of the event that insects seen at a sum stand for: of those of
// the same base and start as e the one that it came nearest to.
func (a *asked) nearest(e *Event, sumCd float64) float64 {
	best := math.Inf(1)
	for i := range a.Events {
		o := &a.Events[i]
		same := o.BaseC == e.BaseC && o.Start == e.Start
		if same && o.Part != FlightEnd && math.Abs(o.SumCd-sumCd) < math.Abs(best-sumCd) {
			best = o.SumCd
		}
	}
	return best
}

// start is the day from which an event's warmth is summed in the growing year of a
// date; None where that hangs on a sighting that was not told.
func (a *asked) start(e *Event, d cal.Date) cal.Date {
	if e.Start == (cal.MonthDay{}) {
		return a.since
	}
	return dayInYear(e.Start, d, a.south)
}
