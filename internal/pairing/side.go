package pairing

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/season"
)

func fateOf(fates []outlook.Fate, id string) *outlook.Fate {
	for i := range fates {
		if fates[i].Planting == id {
			return &fates[i]
		}
	}
	return nil
}

func sideOf(both, alone *outlook.Fate) Side {
	s := Side{Kg: meanKg(both), AloneKg: meanKg(alone), Ready: ready(both), AloneReady: ready(alone)}
	s.Share = part(s.Kg, s.AloneKg)
	return s
}

func part(kg, alone float64) float64 {
	if alone <= 0 {
		return 0
	}
	return kg / alone
}

// meanKg is what a planting gives, mean over the futures [kg].
func meanKg(f *outlook.Fate) float64 {
	if f == nil || len(f.Years) == 0 {
		return 0
	}
	sum := 0.0
	for _, y := range f.Years {
		sum += givenKg(y)
	}
	return sum / float64(len(f.Years))
}

// givenKg is what a planting could give under one future: all its pickings and
// what stands half-way through its standing [kg].
func givenKg(y *season.Outcome) float64 {
	sum := 0.0
	for _, kg := range y.Flow {
		sum += float64(kg)
	}
	if n := len(y.Standing); n > 0 {
		sum += float64(y.Standing[n/2])
	}
	return sum
}

func ready(f *outlook.Fate) When {
	if f == nil || len(f.Years) == 0 {
		return When{Middle: cal.None}
	}
	var days []int
	for _, y := range f.Years {
		if y.Ready >= 0 {
			days = append(days, y.Ready)
		}
	}
	w := When{Middle: cal.None, Odds: float64(len(days)) / float64(len(f.Years))}
	if 2*len(days) >= len(f.Years) {
		sort.Ints(days)
		// Futures in which it never is come last.
		w.Middle = f.First + cal.Date(days[min(len(days)-1, len(f.Years)/2)])
	}
	return w
}
