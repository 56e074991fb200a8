package window

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// year makes odds out of a chance for each day of the year.
func year(chance func(day int) float64) *odds {
	o := newOdds()
	for day := 1; day <= yearDays; day += usualStep {
		good := int(math.Round(1000 * chance(day)))
		o.set(day, tally{years: 1000, good: good, took: []int{60}})
	}
	return o
}

// hump is a season: 1 within half the width of its middle, falling to 0 over a
// month, round the year.
func hump(day, middle, half int) float64 {
	gap := wrap(day - middle)
	gap = min(gap, yearDays-gap)
	return min(1, max(0, 1-float64(gap-half)/30))
}

func TestOneSeasonIsOneWindow(t *testing.T) {
	a := year(func(d int) float64 { return hump(d, 150, 40) }).answer(0.8)
	if len(a.Windows) != 1 {
		t.Fatalf("%d windows", len(a.Windows))
	}
	w := a.Windows[0]
	if w.First < 100 || w.First > 112 || w.Last < 188 || w.Last > 200 {
		t.Errorf("from day %d to %d", w.First, w.Last)
	}
	if w.ReadyFrom != wrap(w.First-1+60)+1 {
		t.Errorf("ready from day %d", w.ReadyFrom)
	}
}

func TestWindowCrossesTheNewYear(t *testing.T) {
	a := year(func(d int) float64 { return hump(d, 1, 50) }).answer(0.8)
	if len(a.Windows) != 1 || a.Windows[0].First < 300 || a.Windows[0].Last > 70 {
		t.Errorf("windows %v", a.Windows)
	}
}

func TestSeasonsAreJudgedByTheirOwnBest(t *testing.T) {
	a := year(func(d int) float64 { return max(hump(d, 100, 20), 0.5*hump(d, 260, 20)) }).answer(0.8)
	if len(a.Windows) != 2 {
		t.Fatalf("%d windows, want a firm and a lesser one", len(a.Windows))
	}
	if low := a.Windows[1]; low.Chance > 0.55 || low.First > 260 || low.Last < 260 {
		t.Errorf("lesser season %+v", low)
	}
}

func TestNeverIsAnsweredWithTheBest(t *testing.T) {
	a := year(func(d int) float64 { return 0.2 * hump(d, 200, 10) }).answer(0.8)
	if len(a.Windows) != 0 || a.Best < 0.15 || a.BestDay < 185 || a.BestDay > 215 {
		t.Errorf("%+v", a)
	}
}

func TestAllYearIsOneWindow(t *testing.T) {
	a := year(func(int) float64 { return 1 }).answer(0.8)
	if len(a.Windows) != 1 || a.Windows[0].First != 1 || a.Windows[0].Last != yearDays {
		t.Errorf("%+v", a.Windows)
	}
}

// Whatever the odds: at most three windows, none under a week, none overlapping,
// and every day with the wanted chance lies in one unless three others do.
func TestWindowsKeepTheirRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 6).Draw(t, "humps")
		type season struct {
			middle, half int
			height       float64
		}
		var all []season
		for range n {
			all = append(all, season{rapid.IntRange(1, 365).Draw(t, "middle"), rapid.IntRange(0, 60).Draw(t, "half"), rapid.Float64Range(0, 1).Draw(t, "height")})
		}
		a := year(func(d int) float64 {
			c := 0.0
			for _, s := range all {
				c = max(c, s.height*hump(d, s.middle, s.half))
			}
			return c
		}).answer(0.8)
		if len(a.Windows) > 3 {
			t.Fatalf("%d windows", len(a.Windows))
		}
		var taken [yearDays]bool
		for _, w := range a.Windows {
			length := wrap(w.Last-w.First) + 1
			if length < 7 {
				t.Fatalf("a window of %d days", length)
			}
			for k := range length {
				i := wrap(w.First - 1 + k)
				if taken[i] {
					t.Fatalf("windows overlap on day %d: %+v", i+1, a.Windows)
				}
				taken[i] = true
			}
		}
	})
}

// The ten years of a window run from the earliest to the latest of the good
// years, and the chance by day is that of the windows.
func TestAnswerTellsTenYearsAndEveryDay(t *testing.T) {
	o := newOdds()
	for day := 1; day <= yearDays; day += usualStep {
		c := tally{years: 10}
		if hump(day, 150, 40) > 0.5 {
			c.good, c.took = 10, []int{90, 60, 62, 64, 66, 68, 70, 72, 74, 76}
		}
		o.set(day, c)
	}
	a := o.answer(0.8)
	if len(a.Windows) != 1 {
		t.Fatalf("%d windows", len(a.Windows))
	}
	w := a.Windows[0]
	if want := [10]int{60, 62, 64, 66, 68, 70, 72, 74, 76, 90}; w.FirstTook != want || w.LastTook != want {
		t.Errorf("ten years are %v and %v", w.FirstTook, w.LastTook)
	}
	if a.ByDay[a.BestDay-1] != a.Best || a.ByDay[149] < 0.99 || a.ByDay[0] > 0.01 {
		t.Errorf("best %.2f on day %d; by day %.2f in May, %.2f in January", a.Best, a.BestDay, a.ByDay[149], a.ByDay[0])
	}
	if c := a.ByDay[w.First-1]; c < 0.8 {
		t.Errorf("%.2f on the first day of the window", c)
	}
}
