package draft

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/programme"
	"garner/internal/words"
)

// wants makes a demand of each vegetable that somebody wants within the problem, and
// tells of those that the crop book does not grow.
func (b *builder) wants() {
	portions, seasonal := portionsOf(b.Book), seasonalIn(b.Book)
	for i := range b.Holding.Wants {
		w := &b.Holding.Wants[i]
		if w.KgPerWeek <= 0 {
			continue
		}
		portion, grown := portions[w.Vegetable]
		if !grown {
			b.draft.Notes = append(b.draft.Notes, words.P("draft.not_grown", words.Args{"vegetable": w.Vegetable}))
			continue
		}
		if !seasonal[w.Vegetable] {
			b.draft.Notes = append(b.draft.Notes, words.P("draft.perennial", words.Args{"vegetable": w.Vegetable}))
			continue
		}
		at, known := b.draft.demands[w.Vegetable]
		if !known {
			at = len(b.problem.Demands)
			b.draft.demands[w.Vegetable] = at
			b.problem.Demands = append(b.problem.Demands, programme.Demand{ID: w.Vegetable, OverCost: roundCost(overPortion / portion),
				Levels: []programme.Level{{PerWeek: make([]float64, b.Weeks), Cost: roundCost(1 / portion)}}})
		}
		addWant(b.problem.Demands[at].Levels[0].PerWeek, w, b.From)
	}
	for d := range b.problem.Demands {
		week := b.problem.Demands[d].Levels[0].PerWeek
		for u := range week {
			week[u] = roundKg(week[u])
		}
	}
}

func addWant(weeks []float64, w *larder.Want, from cal.Date) {
	for day := range 7 * len(weeks) {
		if w.InSeason(from + cal.Date(day)) {
			weeks[day/7] += w.KgPerWeek / 7
		}
	}
}

// portionsOf are the weights of a portion of each vegetable of the book, as of the
// first use of it [kg].
func portionsOf(book *crop.Book) map[string]float64 {
	out := map[string]float64{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if _, known := out[u.Vegetable]; !known && u.Feeds() && u.PortionG > 0 {
				out[u.Vegetable] = u.PortionG / 1000
			}
		}
	}
	return out
}

// seasonalIn are the vegetables that a draft can plan: those of crops that are over
// within a season. Perennials are kept as they are.
func seasonalIn(book *crop.Book) map[string]bool {
	out := map[string]bool{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() && u.Pattern != crop.Perennial {
				out[u.Vegetable] = true
			}
		}
	}
	return out
}
