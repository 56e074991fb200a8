package outlook

import (
	"cmp"
	"slices"

	"garner/internal/num"
)

// Surplus is what goes over of one vegetable, by week [kg].
type Surplus struct {
	Vegetable       string
	Kg              []float64   // mean over the futures: the table's over
	Poor, Mid, Good []float64   // the same in the poor, middle and good year of ten
	Chance          []float64   // of enough going over to be worth giving away, 0-1
	Years           [][]float64 // by future
	From            []OverFrom  // plantings it goes over from, the most first
}

// OverFrom is a planting whose food goes over, with its mean over all that the
// larder looks at [kg].
type OverFrom struct {
	Planting, Crop, Use string
	Kg                  float64
	FullKg              float64 // of it: its store had no room
	NoTimeKg            float64 // of it: the kitchen had no time
}

// WorthGiving is how much must go over in a week to be worth a word [kg]: about a
// meal's vegetables for two. Judgement.
const WorthGiving = 0.3

// Surpluses returns what goes over of each vegetable, in the table's order;
// vegetables of which nothing ever does are left out.
func (t *Table) Surpluses() []Surplus {
	var out []Surplus
	for i := range t.Vegetables {
		w := t.Weekly(i, true)
		if s := surplusOf(&w); slices.Max(s.Kg) > 0 {
			s.From = t.overFrom(w.Name)
			out = append(out, s)
		}
	}
	return out
}

func surplusOf(w *Weekly) Surplus {
	n := len(w.Over)
	s := Surplus{Vegetable: w.Name, Kg: w.Over, Poor: make([]float64, n), Mid: make([]float64, n), Good: make([]float64, n), Chance: make([]float64, n)}
	for f := range w.Members {
		s.Years = append(s.Years, w.Members[f].Over)
	}
	at := make([]float64, len(s.Years))
	for k := range n {
		for f := range s.Years {
			if at[f] = s.Years[f][k]; at[f] >= WorthGiving {
				s.Chance[k] += 1 / float64(len(s.Years))
			}
		}
		slices.Sort(at)
		s.Poor[k], s.Mid[k], s.Good[k] = num.Quantile(at, 0.1), num.Quantile(at, 0.5), num.Quantile(at, 0.9)
		s.Chance[k] = min(1, s.Chance[k])
	}
	return s
}

// overFrom lists the plantings that a vegetable goes over from.
func (t *Table) overFrom(vegetable string) []OverFrom {
	var out []OverFrom
	for _, g := range t.groups {
		at := map[string]int{}
		for _, m := range g.members {
			if u := m.bed.uses[m.index].use; u.Vegetable == vegetable {
				at[m.bed.plantings[m.index].ID] = len(out)
				out = append(out, OverFrom{Planting: m.bed.plantings[m.index].ID, Crop: u.Crop, Use: u.Name})
			}
		}
		for _, y := range g.result.years {
			for i := range y.Plantings {
				if k, ours := at[y.Plantings[i].Planting]; ours {
					p, years := &y.Plantings[i], float64(t.Years)
					out[k].Kg += p.OverKg / years
					out[k].FullKg += p.FullKg / years
					out[k].NoTimeKg += p.NoTimeKg / years
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b OverFrom) int { return cmp.Compare(b.Kg, a.Kg) })
	return slices.DeleteFunc(out, func(o OverFrom) bool { return o.Kg <= 0 })
}
