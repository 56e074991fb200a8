package climate

import (
	"garner/internal/fault"
	"garner/internal/sun"
)

// Complete makes an unbroken series of a record of any length from its first to
// its last day: short gaps bridged, longer ones from a generator of the record's
// own months, radiation from sunshine or from the temperature range where it was
// not measured. Months of the year that the record never saw borrow from the
// nearest one it did, which matters only to gaps.
func Complete(r *Record, loc sun.Location) (Series, error) {
	if r == nil || len(r.Days) == 0 {
		return Series{}, fault.New(fault.Invalid, "climate.record_empty", nil)
	}
	own, err := NormalsOf(r)
	if err != nil {
		own = patchedNormals(r)
	}
	g, err := NewGenerator(own, loc)
	if err != nil {
		return Series{}, err
	}
	first, n := r.span()
	filled, _ := fillRecord(r, g, first, n)
	return filled, nil
}

// patchedNormals returns the means of the months that a record knows, and for
// the rest those of the nearest known month.
func patchedNormals(r *Record) Normals {
	var n Normals
	var tMin, tMax [12]sums
	var all, whole sums
	for _, o := range r.Days {
		m := o.Date.Month() - 1
		tMin[m].add(o.TMinC)
		tMax[m].add(o.TMaxC)
		all.add(o.TMinC)
		whole.add(o.TMaxC)
	}
	for i := range n {
		n[i] = MonthNormal{TMinC: all.mean().Value, TMaxC: whole.mean().Value}
		for gap := 0; gap <= 6; gap++ {
			if k, ok := nearestKnown(tMin, tMax, i, gap); ok {
				n[i].TMinC, n[i].TMaxC = tMin[k].mean().Value, tMax[k].mean().Value
				break
			}
		}
	}
	return n
}

func nearestKnown(tMin, tMax [12]sums, month, gap int) (int, bool) {
	for _, k := range []int{(month + gap) % 12, (month - gap + 12) % 12} {
		if tMin[k].n > 0 && tMax[k].n > 0 {
			return k, true
		}
	}
	return 0, false
}
