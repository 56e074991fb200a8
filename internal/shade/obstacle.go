package shade

import (
	"math"

	"garner/internal/place"
)

// obstacle is a feature that throws shade: an upright box on the ground, or the
// ellipsoid of a crown.
type obstacle struct {
	feature      int // in the scene's list
	crown        bool
	x, y         float64 // its middle
	cos, sin     float64 // of its turn
	halfL, halfW float64
	top          float64
	middle, half float64 // of a crown: height of its middle, half its depth
	way          float64 // of a crown: the way that its through share is told for
	lnThrough    [Tenths]float64
	leaf         [Tenths]float64 // share of the leaf that is out
	seasonal     bool
}

// leastThrough stands for nothing comes through: its logarithm is a number.
const leastThrough = 1e-9

// build makes an obstacle of a feature that has a height.
func build(index int, f *place.Feature, northern bool, kinds map[place.FeatureKind]through) obstacle {
	sin, cos := math.Sincos(f.At.TurnDeg * degree)
	o := obstacle{feature: index, crown: f.Tree(), x: f.At.XM, y: f.At.YM, cos: cos, sin: sin,
		halfL: f.LengthM / 2, halfW: f.WidthM / 2, top: f.HeightM}
	if o.crown {
		o.middle, o.half = (f.HeightM+f.BaseM)/2, (f.HeightM-f.BaseM)/2
		o.way = 2 * math.Cbrt(o.halfL*o.halfW*o.half)
	}
	leaf, bare := throughOf(f, kinds[f.Kind])
	o.seasonal = leaf != bare
	days := leafDaysOf(f, northern)
	for t := range o.lnThrough {
		out := days.share(TenthDay(t))
		o.leaf[t] = out
		o.lnThrough[t] = math.Log(max(leastThrough, bare+(leaf-bare)*out))
	}
	return o
}

// throughOf is what comes through a feature in leaf and bare: as told, else as
// usual for its kind. What does not drop its leaves is alike all year, unless
// told otherwise.
func throughOf(f *place.Feature, kind through) (leaf, bare float64) {
	leaf = kind.leaf
	if f.ThroughLeaf > 0 {
		leaf = f.ThroughLeaf
	}
	bare = leaf
	if kind.drops {
		bare = max(kind.bare, leaf)
	}
	if f.ThroughBare > 0 && f.Kind != place.Wall && f.Kind != place.Building && f.Kind != place.Fence {
		bare = f.ThroughBare
	}
	return leaf, bare
}

// own turns a vector on the plan to the obstacle's own axes.
func (o *obstacle) own(x, y float64) (float64, float64) {
	return x*o.cos + y*o.sin, y*o.cos - x*o.sin
}

// distance returns how far along a ray on the plan a box begins, from a point in
// the box's own axes; false when the ray passes it by. 0 within the box.
func (o *obstacle) distance(px, py float64, r ray) (float64, bool) {
	dx, dy := o.own(r.x, r.y)
	near, far := 0.0, math.Inf(1)
	if near, far = slab(px, dx, o.halfL, near, far); near >= far {
		return 0, false
	}
	if near, far = slab(py, dy, o.halfW, near, far); near >= far {
		return 0, false
	}
	return near, true
}

// slab narrows the part of a ray that lies between two parallel sides.
func slab(p, d, half, near, far float64) (float64, float64) {
	if d == 0 {
		if p < -half || p > half {
			return 1, 0
		}
		return near, far
	}
	a, b := (-half-p)/d, (half-p)/d
	if a > b {
		a, b = b, a
	}
	return max(near, a), min(far, b)
}

// chord returns the way of a ray through a crown, as a share of the way that its
// through share is told for, from a point in the crown's own axes at the ground.
func (o *obstacle) chord(px, py float64, r ray) float64 {
	dx, dy := o.own(r.x, r.y)
	ax, ay, az := px/o.halfL, py/o.halfW, -o.middle/o.half
	bx, by, bz := dx/o.halfL, dy/o.halfW, r.tan/o.half
	a := bx*bx + by*by + bz*bz
	b := ax*bx + ay*by + az*bz
	under := b*b - a*(ax*ax+ay*ay+az*az-1)
	if under <= 0 {
		return 0
	}
	root := math.Sqrt(under)
	from, to := max(0, (-b-root)/a), (-b+root)/a
	if to <= from {
		return 0
	}
	return (to - from) * math.Sqrt(1+r.tan*r.tan) / o.way
}
