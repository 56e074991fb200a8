package exchange

import (
	"math"

	"garner/internal/holding"
	"garner/internal/plan"
)

// wishedHours are written also when they are 0; not a number is blank.
var wishedHours = func() column[plan.Wish] {
	c := number("hours", func(w *plan.Wish) *float64 { return &w.Hours })
	written := c.get
	c.get = func(w *plan.Wish) string {
		if math.IsNaN(w.Hours) {
			return ""
		}
		return written(w)
	}
	c.keep = func(w *plan.Wish) bool { return w.Kind == plan.Hours }
	return c
}()

var wishesSheet = rowsOf[plan.Wish]{
	table: tableNamed("wishes"),
	blank: plan.Wish{Hours: math.NaN()},
	columns: []column[plan.Wish]{
		text("id", func(w *plan.Wish) *string { return &w.ID }),
		text("kind", func(w *plan.Wish) *plan.WishKind { return &w.Kind }),
		text("planting", func(w *plan.Wish) *string { return &w.Planting }),
		text("crop", func(w *plan.Wish) *string { return &w.Crop }),
		text("bed", func(w *plan.Wish) *string { return &w.Bed }),
		wishedHours,
	},
	list: func(h *holding.Holding) []plan.Wish { return h.Wishes },
	put:  func(h *holding.Holding, rows []plan.Wish) { h.Wishes = rows },
	tidy: func(w *plan.Wish, _ rune) {
		if math.IsNaN(w.Hours) && w.Kind != plan.Hours {
			w.Hours = 0
		}
	},
}
