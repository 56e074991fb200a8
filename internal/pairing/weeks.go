package pairing

import (
	"garner/internal/cal"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/outlook"
)

// weeks gathers what is seen of a pair, by week.
type weeks struct {
	upper, lower string
	futures      int
	seen         map[cal.Date]*weekSums
	first, last  cal.Date
}

type weekSums struct {
	upper, lower float64
	light        []float64 // by future, sum over the days
	days         []int     // by future
}

func newWeeks(q Question) *weeks {
	return &weeks{upper: q.Upper.ID, lower: q.Lower.ID, futures: min(q.Futures, q.Table.Years), seen: map[cal.Date]*weekSums{},
		first: cal.None, last: cal.None}
}

// leastCover is the cover below which a planting is not yet to be seen.
const leastCover = 0.002

func (w *weeks) see(s *outlook.Sight) {
	if s.Planting != w.upper && s.Planting != w.lower {
		return
	}
	monday := s.Date.Monday()
	sums := w.seen[monday]
	if sums == nil {
		sums = &weekSums{light: make([]float64, w.futures), days: make([]int, w.futures)}
		w.seen[monday] = sums
	}
	part := s.Cover / 7 / float64(w.futures)
	if s.Planting == w.upper {
		sums.upper += part
		return
	}
	sums.lower += part
	if s.Stage != growth.Germinating && s.Stage != growth.Over && s.Stage != growth.Dead {
		sums.light[s.Future] += s.Light.Top
		sums.days[s.Future]++
	}
}

// weeks are those from the first in which either is to be seen to the last.
func (w *weeks) weeks() []Week {
	for monday, s := range w.seen {
		if s.upper < leastCover && s.lower < leastCover {
			continue
		}
		if !w.first.IsSet() || monday < w.first {
			w.first = monday
		}
		if !w.last.IsSet() || monday > w.last {
			w.last = monday
		}
	}
	var out []Week
	if !w.first.IsSet() {
		return nil
	}
	for monday := w.first; monday <= w.last; monday += 7 {
		out = append(out, w.week(monday))
	}
	return out
}

func (w *weeks) week(monday cal.Date) Week {
	week := Week{Monday: monday}
	s := w.seen[monday]
	if s == nil {
		return week
	}
	week.Upper, week.Lower = s.upper, s.lower
	var light []float64
	for f, n := range s.days {
		if n > 0 {
			light = append(light, s.light[f]/float64(n))
		}
	}
	// A week in which few futures have it in leaf says more of those than of it.
	if week.Lit = 4*len(light) >= w.futures && len(light) > 0; week.Lit {
		q := num.Quantiles(light, 0.1, 0.5, 0.9)
		week.Poor, week.Light, week.Good = q[0], q[1], q[2]
	}
	return week
}
