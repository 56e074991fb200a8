package exchange

import (
	"slices"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// wishColumns are what a wish of each kind is told in: the first must be filled, the
// others may be, and no other column is.
var wishColumns = map[plan.WishKind][]string{
	plan.Pin:    {"planting"},
	plan.Forbid: {"crop", "bed"},
	plan.Hours:  {"hours"},
}

// checkWishes holds each wish to what its kind is told in, and finds those told twice.
func (c *checker) checkWishes() {
	seen := map[plan.Wish]bool{}
	for i, w := range c.h.Wishes {
		c.knownPlanting("wishes", i, w.Planting)
		c.checkWish(i, &w)
		w.ID, w.Hours = "", 0 // one limit of hours is enough, whatever it is
		if seen[w] {
			c.wrong("wishes", i, wishColumn(w.Kind), fault.New(fault.Conflict, "exchange.wish_twice", nil))
		}
		seen[w] = true
	}
}

// checkWish finds columns that are blank and should not be, and the other way round.
func (c *checker) checkWish(row int, w *plan.Wish) {
	told, known := wishColumns[w.Kind]
	if !known {
		return // told as a value that the list does not have
	}
	cells := wishesSheet.write(w)
	for i, name := range wishesSheet.columnNames()[2:] {
		filled := cells[i+2] != ""
		key := ""
		switch {
		case name == told[0] && !filled:
			key = "exchange.wish_needs"
		case filled && !slices.Contains(told, name):
			key = "exchange.wish_spare"
		}
		if key != "" && !c.faulty("wishes", row, name) {
			c.wrong("wishes", row, name, fault.New(fault.Invalid, key, words.Args{
				"kind": string(w.Kind), "column": words.P("desk.column_wishes."+name, nil)}))
		}
	}
}

// wishColumn is the column in which a wish is told first.
func wishColumn(kind plan.WishKind) string {
	if told := wishColumns[kind]; len(told) > 0 {
		return told[0]
	}
	return "kind"
}

// checkWishedCrops finds crops that the book does not know.
func (c *checker) checkWishedCrops(book *crop.Book) {
	for i, w := range c.h.Wishes {
		if w.Crop == "" {
			continue
		}
		if _, e := cropOf(book, w.Crop); e != nil {
			c.wrong("wishes", i, "crop", e)
		}
	}
}
