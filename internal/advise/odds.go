package advise

import (
	"math"
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/season"
)

// Spread is a date in the early, middle and late year of ten of those that come
// to it; None when there are none.
type Spread struct{ P10, P50, P90 cal.Date }

// usable tells whether a planting of a use on an area gave a usable crop under
// one future; due is the last day of its span on which it may come ready.
func usable(o *season.Outcome, u *crop.Use, areaM2 float64, due int) bool {
	if o.Ready < 0 || o.Ready > due || !(o.End == growth.Harvested || o.End == growth.Unfinished) {
		return false
	}
	return yieldKg(o) >= u.FairShare*u.YieldKgM2*areaM2
}

// yieldKg is what a planting gave: all that was picked, and the most that stood.
func yieldKg(o *season.Outcome) float64 {
	picked, stood := 0.0, 0.0
	for _, kg := range o.Flow {
		picked += float64(kg)
	}
	for _, kg := range o.Standing {
		stood = max(stood, float64(kg))
	}
	return picked + stood
}

// oddsOf is the share of futures that give a usable crop of a planting.
func (a *Adviser) oddsOf(f *outlook.Fate, u *crop.Use, p *plan.Planting) float64 {
	if len(f.Years) == 0 {
		return 0
	}
	due := math.MaxInt
	if last := season.Due(u, p.Date, a.northern(p.Bed)); last.IsSet() {
		due = int(last - f.First)
	}
	n := 0
	for _, o := range f.Years {
		if usable(o, u, p.AreaM2, due) {
			n++
		}
	}
	return float64(n) / float64(len(f.Years))
}

// readyOf is when it comes ready, over the futures in which it does.
func readyOf(years []*season.Outcome, first cal.Date) Spread {
	var days []int
	for _, o := range years {
		if o.Ready >= 0 {
			days = append(days, o.Ready)
		}
	}
	if len(days) == 0 {
		return Spread{cal.None, cal.None, cal.None}
	}
	sort.Ints(days)
	at := func(tenths int) cal.Date { return first + cal.Date(days[(tenths*(len(days)-1)+5)/10]) }
	return Spread{at(1), at(5), at(9)}
}

// fairOdds are the odds from which a sowing is sensible. judgement: seven years
// in ten; what never reaches them goes by nine tenths of its best.
const fairOdds = 0.7

// lastDay is the last day with sensible odds, between days tried a straight line.
func lastDay(days []cal.Date, odds []float64) cal.Date {
	best := 0.0
	for _, o := range odds {
		best = max(best, o)
	}
	limit := min(fairOdds, 0.9*best)
	for i := len(days) - 1; i >= 0; i-- {
		if odds[i] < limit || best <= 0 {
			continue
		}
		if i+1 < len(days) {
			fall := odds[i] - odds[i+1]
			return days[i] + cal.Date(float64(days[i+1]-days[i])*(odds[i]-limit)/max(fall, 1e-9))
		}
		return days[i]
	}
	return cal.None
}
