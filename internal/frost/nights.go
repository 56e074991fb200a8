package frost

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/place"
)

// Tens are ten values of a spread, from low to high: those that 5, 15 and so on to 95 of
// a hundred futures do not pass.
type Tens [10]float64

// Middle is the value in the middle of the futures.
func (t Tens) Middle() float64 { return (t[4] + t[5]) / 2 }

func tensOf(values []float64) (t Tens) {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	for k := range t {
		t[k] = num.Quantile(sorted, 0.05+0.1*float64(k))
	}
	return t
}

// Night is one night in the open.
type Night struct {
	Evening cal.Date
	C       Tens    // its minimum
	Frost   float64 // share of the futures in which it freezes
	Told    bool    // it is forecast, or told
}

// Week is a run of nights after those that are told one by one.
type Week struct {
	First, Last cal.Date // evenings
	C           Tens     // minimum of the coldest of them
	Frost       float64  // share of the futures in which one of them freezes
}

// Site is the cold to come at a site.
type Site struct {
	Place  place.Site
	Nights []Night
	Weeks  []Week
	Last   *Dates // of the last frost before high summer; nil: none is to come
	First  *Dates // of the first frost after it; nil: beyond what is looked at
}

// Dates are the days that a frost passes in the futures in which it comes.
type Dates struct {
	P10, P50, P90 cal.Date
	Share         float64 // of the futures in which it comes at all
}

func (s *sky) site(at *place.Site, nights int) Site {
	out := Site{Place: *at}
	now := s.first + cal.Date(s.today)
	for i := range min(nightsTold, nights) {
		n := Night{Evening: now + cal.Date(i), C: tensOf(s.coldest(i, i+1)), Frost: s.freezing(i, i+1)}
		n.Told = s.fcast[n.Evening+1]
		out.Nights = append(out.Nights, n)
	}
	for from := nightsTold; from < nights; from += 7 {
		to := min(from+7, nights)
		out.Weeks = append(out.Weeks, Week{First: now + cal.Date(from), Last: now + cal.Date(to) - 1,
			C: tensOf(s.coldest(from, to)), Frost: s.freezing(from, to)})
	}
	summer := s.highSummer(now)
	out.Last, out.First = s.frosts(0, int(summer-now), true), s.frosts(max(0, int(summer-now)), farthest, false)
	return out
}

// highSummer is the next day in the middle of the warm months from a day on.
func (s *sky) highSummer(now cal.Date) cal.Date {
	month := 7
	if s.south {
		month = 1
	}
	day := cal.Of(now.Year(), month, 20)
	if day < now {
		day = cal.Of(now.Year()+1, month, 20)
	}
	return day
}

// coldest is the coldest of a run of nights, by future.
func (s *sky) coldest(from, to int) []float64 {
	out := make([]float64, len(s.minimum))
	for f := range s.minimum {
		out[f] = slices.Min(s.minimum[f][from:to])
	}
	return out
}

// freezing is the share of the futures in which one of a run of nights freezes.
func (s *sky) freezing(from, to int) float64 {
	n := 0
	for _, c := range s.coldest(from, to) {
		if c <= frostC {
			n++
		}
	}
	return float64(n) / float64(len(s.minimum))
}

// frostC is the minimum at or below which a night is a frost [C].
const frostC = 0

// frosts are the days of the last or the first frost in a run of nights.
func (s *sky) frosts(from, to int, last bool) *Dates {
	now := s.first + cal.Date(s.today)
	to = min(to, farthest, len(s.minimum[0]))
	var found []float64
	for f := range s.minimum {
		at := -1
		for i := from; i < to; i++ {
			if s.minimum[f][i] <= frostC && (last || at < 0) {
				at = i
			}
		}
		if at >= 0 {
			found = append(found, float64(now)+float64(at)+1) // the morning is its date
		}
	}
	share := float64(len(found)) / float64(len(s.minimum))
	if share < seldom {
		return nil
	}
	slices.Sort(found)
	day := func(p float64) cal.Date { return cal.Date(num.Quantile(found, p) + 0.5) }
	return &Dates{P10: day(0.1), P50: day(0.5), P90: day(0.9), Share: share}
}
