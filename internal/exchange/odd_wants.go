package exchange

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/words"
)

// The most of one vegetable that each eater is taken to mean in a week. judgement: a
// kilogram, or five portions, of one vegetable every day is a slip of the pen.
const (
	mostEatenKg  = 7.0
	mostPortions = 35.0
)

// OddWant is a want that may stand and yet is hardly meant as it is told.
type OddWant struct {
	Row    int // index into the holding's wants
	Column string
	Says   words.Phrase
}

// OddWants are the wants of a holding that are hardly meant as they are told: of
// nothing, of more than anyone eats, on a single day, bought beyond what is wanted, or
// never to lack in a larger amount than is wanted beside it.
func OddWants(h *holding.Holding) []OddWant {
	var out []OddWant
	for i := range h.Wants {
		w := &h.Wants[i]
		add := func(column, key string, args words.Args) {
			out = append(out, OddWant{i, column, words.P(key, args)})
		}
		switch each := w.KgPerWeek / h.Eaters; {
		case w.PortionsPerEater == 0 && w.KgPerWeek == 0 && w.Importance == larder.Floor:
			add("kg_per_week", "exchange.want_floor_nothing", nil)
		case w.PortionsPerEater == 0 && w.KgPerWeek == 0:
			add("kg_per_week", "exchange.want_nothing", nil)
		case w.PortionsPerEater > mostPortions:
			add("portions_per_eater", "exchange.want_portions_much", words.Args{"n": w.PortionsPerEater, "most": mostPortions})
		case h.Eaters > 0 && each > mostEatenKg:
			add("kg_per_week", "exchange.want_much", words.Args{"each": each, "most": mostEatenKg})
		case w.KgPerWeek > 0 && w.BuyKgPerWeek > w.KgPerWeek:
			add("buy_kg_per_week", "exchange.want_buys_more", words.Args{"buy": w.BuyKgPerWeek, "kg": w.KgPerWeek})
		}
		if w.From != (cal.MonthDay{}) && w.From == w.To {
			add("to", "exchange.want_one_day", words.Args{"day": w.From})
		}
		if less := lessBeside(h.Wants, w); less != nil {
			add("importance", "exchange.want_floor_over", words.Args{"floor": amountOf(w), "wanted": amountOf(less)})
		}
	}
	return out
}

// lessBeside is an ordinary want of the same in the same season of which less is wanted
// than is never to lack; nil when there is none.
func lessBeside(wants []larder.Want, floor *larder.Want) *larder.Want {
	if floor.Importance != larder.Floor {
		return nil
	}
	for i := range wants {
		w := &wants[i]
		same := w.Importance == "" && w.Vegetable == floor.Vegetable && w.Group == floor.Group
		less := w.KgPerWeek > 0 && w.KgPerWeek < floor.KgPerWeek || w.PortionsPerEater > 0 && w.PortionsPerEater < floor.PortionsPerEater
		if same && less && meet(w, floor) {
			return w
		}
	}
	return nil
}

// meet tells whether two wants have a day of the year in common.
func meet(a, b *larder.Want) bool {
	first := cal.Of(2027, 1, 1) // any common year
	for day := range cal.Date(365) {
		if a.InSeason(first+day) && b.InSeason(first+day) {
			return true
		}
	}
	return false
}

// amountOf is how much a want asks for, in its own terms.
func amountOf(w *larder.Want) words.Phrase {
	if w.PortionsPerEater > 0 {
		return words.P("exchange.want_in_portions", words.Args{"n": w.PortionsPerEater})
	}
	return words.P("exchange.want_in_kg", words.Args{"kg": w.KgPerWeek})
}

// warnOfWants warns of wants that are hardly meant as they are told.
func (c *checker) warnOfWants() {
	for _, odd := range OddWants(c.h) {
		if !c.faulty("wants", odd.Row, "kg_per_week", "portions_per_eater", "buy_kg_per_week", "from", "to", "importance", "group", "vegetable") {
			c.warnings.add((&fault.Error{Kind: fault.Invalid, Phrase: odd.Says}).In(c.place("wants", odd.Row, odd.Column)))
		}
	}
}
