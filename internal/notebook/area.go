package notebook

import (
	"math"

	"garner/internal/crop"
	"garner/internal/words"
)

// How far an area may be off by the way it was told, as a share of it. All
// judgement.
const (
	rowsWithin  = 0.15 // rows are set closer or wider than the book has them
	countWithin = 0.2  // so are plants
	seedsWithin = 0.4  // and not every seed comes up
	someWithin  = 0.5
	wholeWithin = 0.3 // nothing told
	someShare   = 0.25
)

// area returns the ground a planting holds [m2] and how far that may be off, and
// says how it came about.
func (r *reading) area(a amount, u *crop.Use) (m2, within float64) {
	whole := r.bed.AreaM2()
	switch a.kind {
	case ofArea:
		m2 = a.areaM2
		r.understand("notebook.area", words.Args{"area": m2})
	case ofRows:
		length := a.lengthM
		if length <= 0 {
			length = math.Max(r.bed.LengthM, r.bed.WidthM)
		}
		m2, within = a.count*length*u.BetweenRowM, rowsWithin
		r.understand("notebook.rows", words.Args{"n": a.count, "length": length, "between": u.BetweenRowM, "area": m2})
	case ofLength:
		m2 = a.lengthM * math.Min(r.bed.LengthM, r.bed.WidthM)
		r.understand("notebook.length", words.Args{"length": a.lengthM, "area": m2})
	case ofCount:
		m2, within = a.count/u.PlantsPerM2(), countWithin
		if a.seeds {
			within = seedsWithin
		}
		r.understand("notebook.count", words.Args{"n": a.count, "area": m2})
	case ofShare:
		m2 = a.share * whole
		r.understand("notebook.share", words.Args{"share": a.share, "area": m2})
	case ofSome:
		m2, within = someShare*whole, someWithin
		r.understand("notebook.some", words.Args{"area": m2})
	default:
		m2, within = whole, wholeWithin
		r.ask("notebook.how_much", words.Args{"bed": r.bed.Name, "area": m2})
	}
	return r.fitting(m2), within
}

// fitting holds an area to the bed it lies in.
func (r *reading) fitting(m2 float64) float64 {
	whole := r.bed.AreaM2()
	if m2 > whole+0.005 {
		r.ask("notebook.too_large", words.Args{"area": m2, "bed": r.bed.Name, "whole": whole})
		m2 = whole
	}
	return math.Max(0.01, math.Round(math.Min(m2, whole)*100)/100)
}
