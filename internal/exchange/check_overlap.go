package exchange

import (
	"cmp"
	"slices"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// overlapM2 is the shared ground above which two things are told to overlap;
// less is a matter of rounding.
const overlapM2 = 0.01

// Warnings tells what is worth a look in a holding that is sound, each with its
// place in the files Write would make.
func Warnings(h *holding.Holding) fault.List {
	c := newChecker(h, newFindings())
	c.checkSense()
	return c.warnings.all()
}

// drawnThing is something drawn on a site, in the order from left to right.
type drawnThing struct {
	row     int
	site    string
	name    string
	corners []place.Point
	from    float64 // its left end [m]
	to      float64
}

// checkOverlaps warns of beds that lie over each other. Pots and benches may
// stand on a bed.
func (c *checker) checkOverlaps() {
	beds := c.drawnBeds(func(b *place.Bed) bool { return b.Kind != "container" && b.Kind != "bench" })
	for i := range beds {
		for k := i + 1; k < len(beds) && beds[k].from < beds[i].to; k++ {
			one, other := &beds[i], &beds[k]
			if one.site != other.site {
				continue
			}
			if shared := place.OverlapM2(one.corners, other.corners); shared > overlapM2 {
				if one.row > other.row {
					one, other = other, one
				}
				c.warnings.add(fault.New(fault.Conflict, "exchange.beds_overlap", words.Args{
					"bed": other.name, "other": one.name, "area": shared}).In(c.place("beds", other.row, "y_m")))
			}
		}
	}
}

// drawnBeds are the beds on a plan that fulfil a condition, from left to right.
func (c *checker) drawnBeds(is func(*place.Bed) bool) []drawnThing {
	var out []drawnThing
	for i := range c.h.Beds {
		b := &c.h.Beds[i]
		if !b.At.IsSet() || !is(b) || c.faulty("beds", i, "x_m", "y_m", "length_m", "width_m", "turn_deg", "outline") {
			continue
		}
		corners := b.Corners()
		low, high := place.Bounds(corners)
		out = append(out, drawnThing{row: i, site: b.Site, name: b.Name, corners: corners, from: low.X, to: high.X})
	}
	slices.SortStableFunc(out, func(a, b drawnThing) int { return cmp.Compare(a.from, b.from) })
	return out
}

// checkStandingIn warns of what stands in a bed: a tree by its trunk, since a
// crown may reach over one, everything else by its ground.
func (c *checker) checkStandingIn(row int, f *place.Feature, beds []drawnThing) {
	corners := f.Corners()
	for _, b := range beds {
		if b.site != f.Site {
			continue
		}
		within := place.Contains(b.corners, place.Point{X: f.At.XM, Y: f.At.YM})
		if !f.Tree() {
			within = place.OverlapM2(b.corners, corners) > overlapM2
		}
		if within {
			c.warnings.add(fault.New(fault.Invalid, "exchange.feature_in_bed", words.Args{"feature": f.Name, "bed": b.name}).In(c.place("features", row, "x_m")))
		}
	}
}
