package desk

import "garner/internal/place"

// How beds that are on no plan are laid in rows [m].
const (
	rowsWidth = 20.0
	rowsLeast = 8.0 // of the width, so that a lone pot is not drawn as large as a bed
	rowsGap   = 0.6
)

// layInRows lays the beds of a site that has no plan out in walking order, in
// rows and to scale.
func (v *GroundYearView) layInRows() {
	width := rowsWidth
	for _, b := range v.Beds {
		width = max(width, b.LengthM+2*rowsGap)
	}
	x, y, deep, reach := rowsGap, rowsGap, 0.0, 0.0
	type spot struct{ x, y float64 }
	spots := make([]spot, len(v.Beds))
	for i, b := range v.Beds {
		if x+b.LengthM+rowsGap > width && x > rowsGap {
			x, y, deep = rowsGap, y+deep+rowsGap, 0
		}
		spots[i] = spot{x + b.LengthM/2, y + b.WidthM/2}
		reach = max(reach, x+b.LengthM)
		x, deep = x+b.LengthM+rowsGap, max(deep, b.WidthM)
	}
	depth := y + deep + rowsGap
	width = max(reach+rowsGap, rowsLeast)
	for i, b := range v.Beds {
		b.At = place.Spot{XM: spots[i].x, YM: depth - spots[i].y}
	}
	v.Site.PlanWidthM, v.Site.PlanDepthM = width, depth
}
