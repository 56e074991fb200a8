package appetite

import (
	"garner/internal/crop"
	"garner/internal/larder"
)

// ByWeight tells all wants of a household by weight: portions of each eater are
// portions of the book as they are picked, of a group the mean of its members'. A
// want told by weight stays as it is,
// and so does one of a vegetable that the book does not know.
func ByWeight(b *crop.Book, eaters float64, groups []larder.Group, wants []larder.Want) []larder.Want {
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
		w.KgPerWeek = w.PortionsPerEater * portionOf(known, groups, w) * eaters
	}
	return out
}

// portionOf is the weight of a portion of what is wanted: of a group the mean of its
// members' [kg]; 0 where the book knows none.
func portionOf(known map[string]portion, groups []larder.Group, w *larder.Want) float64 {
	if w.Group == "" {
		return known[w.Vegetable].weightKg
	}
	sum, n := 0.0, 0
	for i := range groups {
		for _, m := range groups[i].Members {
			if p, ok := known[m.Vegetable]; ok && groups[i].ID == w.Group {
				sum, n = sum+p.weightKg, n+1
			}
		}
	}
	return sum / float64(max(1, n))
}

// PortionKg is the weight of a portion of a vegetable as it is picked [kg]; 0 of
// one that the book does not know.
func PortionKg(b *crop.Book, vegetable string) float64 { return portionsOf(b)[vegetable].weightKg }
