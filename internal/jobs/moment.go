package jobs

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/season"
)

// moment is a day of a planting's life: known, or as the futures have it.
type moment struct {
	early, mid, late cal.Date // tenth, half and nine tenths of the futures in which it comes
	odds             float64  // share of futures in which it comes
	known            bool     // it was recorded or is planned
	recorded         bool     // it was recorded
}

// likely is the share of futures from which a moment makes jobs.
const likely = 0.5

// is tells whether there is such a day at all.
func (m moment) is() bool { return m.known || m.odds >= likely }

// on is a day that was recorded.
func on(d cal.Date) moment { return moment{d, d, d, 1, true, true} }

// planned is a day that the plan has.
func planned(d cal.Date) moment { return moment{d, d, d, 1, true, false} }

// momentOf reads a day off every future of a planting's fate.
func momentOf(f *outlook.Fate, day func(*season.Outcome) int) moment {
	var found []cal.Date
	for _, o := range f.Years {
		if d := day(o); d >= 0 {
			found = append(found, f.First+cal.Date(d))
		}
	}
	if len(found) == 0 {
		return moment{early: cal.None, mid: cal.None, late: cal.None}
	}
	slices.Sort(found)
	at := func(share float64) cal.Date { return found[int(share*float64(len(found)-1)+0.5)] }
	return moment{at(0.1), at(0.5), at(0.9), float64(len(found)) / float64(len(f.Years)), false, false}
}

// food is what a planting gives day by day, mean over the futures [kg].
type food struct {
	first    cal.Date
	flow     []float64 // newly ready to be picked
	standing []float64 // stands to be pulled
	last     float64   // that stood on the last day of it [kg]
}

// foodOf adds up the futures from one day to before another.
func foodOf(f *outlook.Fate, from, until cal.Date) food {
	out := food{first: from}
	share := 1 / float64(max(1, len(f.Years)))
	start, n := int(from-f.First), int(until-from)
	for _, o := range f.Years {
		out.flow = added(out.flow, o.First-start, n, o.Flow, share)
		out.standing = added(out.standing, o.First-start, n, o.Standing, share)
		if n := len(o.Standing); n > 0 {
			out.last += float64(o.Standing[n-1]) * share
		}
	}
	return out
}

// added adds a future's days, of which the first lies at an index of the sum, to as
// many days as are asked for.
func added(to []float64, first, n int, days []float32, share float64) []float64 {
	low, high := max(0, -first), min(len(days), n-first)
	if low >= high {
		return to
	}
	if to == nil {
		to = make([]float64, n)
	}
	for i := low; i < high; i++ {
		to[first+i] += float64(days[i]) * share
	}
	return to
}

// between sums what comes ready from one day to before another [kg].
func (f *food) between(from, until cal.Date) float64 {
	sum := 0.0
	for d := from; d < until; d++ {
		sum += valueAt(f.flow, d-f.first)
	}
	return sum
}

// stands is what stands on a day [kg].
func (f *food) stands(d cal.Date) float64 { return valueAt(f.standing, d-f.first) }

func valueAt(days []float64, i cal.Date) float64 {
	if i < 0 || int(i) >= len(days) {
		return 0
	}
	return days[i]
}
