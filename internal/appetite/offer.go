package appetite

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/words"
)

// Offer is a vegetable that a household may tick.
type Offer struct {
	Vegetable string // its name at the table, by which it is ticked
	Plural    string
	Usual     Tick
	AllYear   bool
	From, To  cal.MonthDay // its season; zero: all year
}

// Offered lists the vegetables of the book in the order in which people are
// asked about them: what most eat often first.
func Offered(b *crop.Book, south bool) []Offer {
	portions := portionsOf(b)
	var out []Offer
	for _, v := range vegetables() {
		p, known := portions[v.name]
		if !known {
			continue
		}
		o := Offer{Vegetable: v.name, Plural: p.plural, Usual: v.usual, AllYear: v.from.Month == 0}
		o.From, o.To = v.season(south)
		out = append(out, o)
	}
	return out
}

// Phrase names a tick in words.
func (t Tick) Phrase() words.Phrase { return words.P("appetite.tick_"+string(t), nil) }
