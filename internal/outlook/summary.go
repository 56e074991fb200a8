package outlook

import (
	"sort"

	"garner/internal/larder"
	"garner/internal/num"
)

// Weekly is one vegetable by week [kg]: means over the futures, the spread of
// what is short, and the chance of a gap.
type Weekly struct {
	Name                             string
	Importance                       larder.Importance
	Want, Fresh, Stored, Short, Over []float64
	ShortP10, ShortP50, ShortP90     []float64
	Bought                           []float64 // nil where nothing of it may be bought
	GapChance                        []float64
	Members                          []Member // by future, only when asked for
}

// Member is one vegetable by week under one future [kg].
type Member struct{ Fresh, Stored, Short, Over []float64 }

// gapShare is the share of a week's want that must be lacking for the week to
// count as a gap.
const gapShare = 0.1

// Summary is the table by week over all vegetables.
type Summary struct {
	Vegetables []Weekly
	Share      []float64 // share of the want that is home-grown, by week, 0-1; 1 where nothing is wanted
	Year       float64   // the same over the whole table
}

// Summarise adds the days up to weeks and the futures to means and odds.
func (t *Table) Summarise(members bool) *Summary {
	s := &Summary{Share: make([]float64, t.Weeks)}
	got, want := make([]float64, t.Weeks), make([]float64, t.Weeks)
	for i := range t.Vegetables {
		w := t.Weekly(i, members)
		for k := range got {
			got[k] += w.Fresh[k] + w.Stored[k]
			want[k] += w.Want[k]
		}
		s.Vegetables = append(s.Vegetables, w)
	}
	sumGot, sumWant := 0.0, 0.0
	for k := range got {
		s.Share[k] = share(got[k], want[k])
		sumGot += got[k]
		sumWant += want[k]
	}
	s.Year = share(sumGot, sumWant)
	return s
}

func share(got, want float64) float64 {
	if want <= 0 {
		return 1
	}
	return got / want
}

// Weekly adds one vegetable's days up to weeks and its futures to means and odds.
// What it returns is shared and must not be changed.
func (t *Table) Weekly(vegetable int, members bool) Weekly {
	v := &t.Vegetables[vegetable]
	w := v.sums.weekly.of(v.Name, func() Weekly { return t.addUp(v) })
	w.Importance = v.Importance
	if !members {
		w.Members = nil
	}
	return w
}

func (t *Table) addUp(v *Vegetable) Weekly {
	n := t.Weeks
	w := Weekly{Name: v.Name, Fresh: make([]float64, n), Stored: make([]float64, n), Short: make([]float64, n),
		Over: make([]float64, n), ShortP10: make([]float64, n), ShortP50: make([]float64, n), ShortP90: make([]float64, n),
		GapChance: make([]float64, n)}
	short := make([][]float64, n)
	var sums [4][]float64
	for f := range v.Years {
		c := &v.Years[f]
		for k, course := range [][]float32{c.Fresh, c.Stored, c.Short, c.Over} {
			sums[k] = larder.Weekly(sums[k], course, t.From)
		}
		if c.Bought != nil {
			w.addBought(c.Bought, t, len(v.Years))
		}
		if w.Want == nil {
			w.Want = larder.Weekly(nil, c.Want, t.From)
		}
		for k := 0; k < n; k++ {
			w.Fresh[k] += sums[0][k]
			w.Stored[k] += sums[1][k]
			w.Short[k] += sums[2][k]
			w.Over[k] += sums[3][k]
			short[k] = append(short[k], sums[2][k])
		}
		w.Members = append(w.Members, Member{clone(sums[0]), clone(sums[1]), clone(sums[2]), clone(sums[3])})
	}
	w.odds(short, float64(len(v.Years)))
	return w
}

// addBought adds what is bought under one future to the mean of all.
func (w *Weekly) addBought(course []float32, t *Table, years int) {
	if w.Bought == nil {
		w.Bought = make([]float64, t.Weeks)
	}
	for k, kg := range larder.Weekly(nil, course, t.From) {
		w.Bought[k] += kg / float64(years)
	}
}

// odds turns sums over the futures into means, and the futures' shortages into
// quantiles and the chance of a gap.
func (w *Weekly) odds(short [][]float64, years float64) {
	for k := range short {
		for _, course := range [][]float64{w.Fresh, w.Stored, w.Short, w.Over} {
			course[k] /= years
		}
		sort.Float64s(short[k])
		w.ShortP10[k] = num.Quantile(short[k], 0.1)
		w.ShortP50[k] = num.Quantile(short[k], 0.5)
		w.ShortP90[k] = num.Quantile(short[k], 0.9)
		limit, gaps := gapShare*w.Want[k], 0
		for _, kg := range short[k] {
			if kg > limit && kg > 0 {
				gaps++
			}
		}
		w.GapChance[k] = float64(gaps) / years
	}
}

func clone(s []float64) []float64 { return append([]float64(nil), s...) }
