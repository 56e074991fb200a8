package outlook

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/num"
)

// Gap is a run of weeks in which a vegetable is short more often than not.
type Gap struct {
	First, Last cal.Date // first and last day
	From        int      // index of the first week
	Weeks       int
	Good, Poor  int     // weeks short round the gap in the good and the poor year of ten
	Chance      float64 // mean chance of a week being short
	Lacks       float64 // mean share of the want that lacks
	ShortKg     float64 // all that lacks [kg]
	Now         bool    // it begins with the table
}

// likelyGap is the chance from which a week counts as short.
const likelyGap = 0.5

// Likely tells whether a chance of a week being short makes it count as short.
func Likely(chance float64) bool { return chance >= likelyGap }

// round is how many weeks before and after a gap still belong to it when the
// good and the poor year are counted.
const round = 6

// LikelyShort tells whether a week of a vegetable is short more often than not.
func LikelyShort(w *Weekly, week int) bool {
	return w.Want[week] > 0 && Likely(w.GapChance[week])
}

// Gaps finds the runs of weeks in which a vegetable is short more often than
// not, in order of time. Members must have been kept.
func (t *Table) Gaps(w *Weekly) []Gap {
	var gaps []Gap
	for k := 0; k < len(w.Want); k++ {
		if !LikelyShort(w, k) {
			continue
		}
		g := Gap{From: k, First: t.From + cal.Date(7*k), Now: k == 0}
		for ; k < len(w.Want) && LikelyShort(w, k); k++ {
			g.Weeks++
			g.Chance += w.GapChance[k]
			g.ShortKg += w.Short[k]
			g.Lacks += w.Short[k] / w.Want[k]
		}
		g.Last = t.From + cal.Date(7*k) - 1
		g.Chance /= float64(g.Weeks)
		g.Lacks /= float64(g.Weeks)
		g.Good, g.Poor = spread(w, g)
		gaps = append(gaps, g)
	}
	return gaps
}

// reach is from which week until which the short weeks belong to a gap: round it, as
// far as to the next gap on either side.
func reach(w *Weekly, g Gap) (from, to int) {
	from, to = g.From, g.From+g.Weeks
	for from > max(0, g.From-round) && !LikelyShort(w, from-1) {
		from--
	}
	for to < min(len(w.Want), g.From+g.Weeks+round) && !LikelyShort(w, to) {
		to++
	}
	return from, to
}

// spread counts the short weeks round a gap in every future and returns the
// counts of the good and the poor year of ten.
func spread(w *Weekly, g Gap) (good, poor int) {
	from, to := reach(w, g)
	var counts []float64
	for _, m := range w.Members {
		n := 0
		for k := from; k < to; k++ {
			if w.Want[k] > 0 && m.Short[k] > gapShare*w.Want[k] {
				n++
			}
		}
		counts = append(counts, float64(n))
	}
	if len(counts) == 0 {
		return g.Weeks, g.Weeks
	}
	sort.Float64s(counts)
	return int(num.Quantile(counts, 0.1) + 0.5), int(num.Quantile(counts, 0.9) + 0.5)
}
