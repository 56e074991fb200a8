package web

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// sourceMonths is one source of a vegetable in figures [kg a month].
type sourceMonths struct {
	Name string
	Kg   []float64
	Sum  bool
}

// monthsAlong are the months of a table and the month that each week's middle
// falls into.
func monthsAlong(from cal.Date, weeks int) (months []cal.Date, of []int) {
	of = make([]int, weeks)
	for k := range of {
		year, month, _ := (from + cal.Date(7*k+3)).YMD()
		if first := cal.Of(year, month, 1); len(months) == 0 || months[len(months)-1] != first {
			months = append(months, first)
		}
		of[k] = len(months) - 1
	}
	return months, of
}

// sourceMonths tells the want, each source and what lacks, by month.
func (v *visit) sourceMonths(view *desk.VegetableView) ([]cal.Date, []sourceMonths) {
	months, of := monthsAlong(view.From, view.Weeks)
	sum := func(course []float64) []float64 {
		out := make([]float64, len(months))
		for k, kg := range course {
			out[of[k]] += kg
		}
		return out
	}
	short := sum(view.WantKg)
	rows := []sourceMonths{{Name: v.say("web.vegetable_twin_want", nil), Kg: sum(view.WantKg), Sum: true}}
	add := func(key string, s *desk.SourceView, course []float64) {
		kg := sum(course)
		any := false
		for m := range kg {
			short[m] -= kg[m]
			any = any || kg[m] > 0
		}
		if any {
			rows = append(rows, sourceMonths{Name: v.say(key, words.Args{"letter": s.Letter, "name": s.Name}), Kg: kg})
		}
	}
	for i := range view.Sources {
		s := &view.Sources[i]
		add("web.vegetable_twin_fresh", s, s.FreshKg)
		add("web.vegetable_twin_stored", s, s.StoredKg)
	}
	for m := range short {
		short[m] = max(0, short[m])
	}
	return months, append(rows, sourceMonths{Name: v.say("web.vegetable_twin_short", nil), Kg: short, Sum: true})
}
