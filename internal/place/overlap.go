package place

import "math"

// OverlapM2 is the ground that two shapes share [m2], each given by its corners
// in order, neither crossing itself. Both are parted into triangles from their
// first corner, counted with the sense in which they run round, so that what a
// hollow shape does not hold is taken off again.
func OverlapM2(a, b []Point) float64 {
	if len(a) < 3 || len(b) < 3 || apart(a, b) {
		return 0
	}
	sum := 0.0
	for i := 1; i+1 < len(a); i++ {
		one, sense := turnedRight([3]Point{a[0], a[i], a[i+1]})
		for k := 1; k+1 < len(b); k++ {
			other, against := turnedRight([3]Point{b[0], b[k], b[k+1]})
			sum += sense * against * sharedM2(one, other)
		}
	}
	return math.Abs(sum)
}

// apart tells whether the upright boxes about two shapes do not meet.
func apart(a, b []Point) bool {
	aLow, aHigh := Bounds(a)
	bLow, bHigh := Bounds(b)
	return aHigh.X <= bLow.X || bHigh.X <= aLow.X || aHigh.Y <= bLow.Y || bHigh.Y <= aLow.Y
}

// Bounds are the lower left and the upper right corner of the upright box about
// points.
func Bounds(points []Point) (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
		high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
	}
	return low, high
}

// turnedRight is a triangle anticlockwise, with the sense it ran in before.
func turnedRight(t [3]Point) ([3]Point, float64) {
	if side(t[0], t[1], t[2]) < 0 {
		return [3]Point{t[0], t[2], t[1]}, -1
	}
	return t, 1
}

// sharedM2 is the ground that two triangles share, both anticlockwise [m2].
func sharedM2(a, b [3]Point) float64 {
	left := a[:]
	for i := range b {
		left = leftOf(left, b[i], b[(i+1)%3])
		if len(left) < 3 {
			return 0
		}
	}
	return Area(left)
}

// leftOf is the part of a convex shape left of a line.
func leftOf(shape []Point, from, to Point) []Point {
	var out []Point
	for i, p := range shape {
		q := shape[(i+1)%len(shape)]
		here, next := side(from, to, p), side(from, to, q)
		if here >= 0 {
			out = append(out, p)
		}
		if here > 0 && next < 0 || here < 0 && next > 0 {
			share := here / (here - next)
			out = append(out, Point{p.X + share*(q.X-p.X), p.Y + share*(q.Y-p.Y)})
		}
	}
	return out
}
