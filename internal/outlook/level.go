package outlook

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/num"
)

// Levels is the course of one store over the table: quantiles over the futures,
// and when it is empty.
type Levels struct {
	Store string
	Kg    [9][]float64 // by decile, 10 % first, and day of the table [kg]
	Empty []cal.Date   // by future, the first day it is empty; None: never within the table
}

// emptyKg is what may lie in a store that is called empty [kg]: less than a meal.
const emptyKg = 0.1

// Levels returns the course of each store that is used.
func (t *Table) Levels() []Levels {
	out := make([]Levels, 0, len(t.Stores))
	for i := range t.Stores {
		out = append(out, t.Stores[i].levels(t.From))
	}
	return out
}

func (s *StoreCourse) levels(from cal.Date) Levels {
	l := Levels{Store: s.Store}
	if len(s.LevelKg) == 0 {
		return l
	}
	days, at := len(s.LevelKg[0]), make([]float64, len(s.LevelKg))
	for d := range l.Kg {
		l.Kg[d] = make([]float64, days)
	}
	for day := range days {
		for f := range s.LevelKg {
			at[f] = float64(s.LevelKg[f][day])
		}
		slices.Sort(at)
		for d := range l.Kg {
			l.Kg[d][day] = num.Quantile(at, float64(d+1)/10)
		}
	}
	for _, level := range s.LevelKg {
		empty := cal.None
		if day := slices.IndexFunc(level, func(kg float32) bool { return kg < emptyKg }); day >= 0 {
			empty = from + cal.Date(day)
		}
		l.Empty = append(l.Empty, empty)
	}
	return l
}
