package appetite

import (
	"garner/internal/crop"
	"garner/internal/larder"
)

// ByWeight tells all wants of a household by weight: portions of each eater are
// portions of the book as they are picked. A want told by weight stays as it is,
// and so does one of a vegetable that the book does not know.
func ByWeight(b *crop.Book, eaters float64, wants []larder.Want) []larder.Want {
	out := append([]larder.Want(nil), wants...)
	var known map[string]portion
	for i := range out {
		w := &out[i]
		if w.PortionsPerEater <= 0 {
			continue
		}
		if known == nil {
			known = portionsOf(b)
		}
		if p, ok := known[w.Vegetable]; ok {
			w.KgPerWeek = w.PortionsPerEater * p.weightKg * eaters
		}
	}
	return out
}

// PortionKg is the weight of a portion of a vegetable as it is picked [kg]; 0 of
// one that the book does not know.
func PortionKg(b *crop.Book, vegetable string) float64 { return portionsOf(b)[vegetable].weightKg }
