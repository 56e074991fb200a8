package place

// Part is the outline, on the plan, of a piece of the bed that begins at a share
// of its ground, counted along its length, and is a share of it, both 0-1: cut
// across the length, so that its ground comes to that share whatever the shape.
func (b Bed) Part(at, share float64) []Point {
	flat := b
	flat.At = Spot{}
	own := flat.Corners()
	cut := func(share float64) float64 { return cutAt(own, share) }
	if b.Shape == "" || b.Shape == Rectangle {
		cut = func(share float64) float64 { return b.LengthM * (share - 0.5) }
	}
	return b.At.place(beyond(before(own, cut(at+share)), cut(at)))
}

// cutAt is where, along its length, a cut leaves a share of a shape's ground
// before it [m].
func cutAt(own []Point, share float64) float64 {
	low, high := own[0].X, own[0].X
	for _, p := range own {
		low, high = min(low, p.X), max(high, p.X)
	}
	if share <= 0 {
		return low
	}
	if share >= 1 {
		return high
	}
	want := share * Area(own)
	for range 40 { // to less than a millionth of the length
		if middle := (low + high) / 2; Area(before(own, middle)) < want {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// before is the part of a shape left of a cut (Sutherland & Hodgman 1974, Reentrant
// polygon clipping, CACM 17).
func before(own []Point, x float64) []Point {
	var out []Point
	for i, p := range own {
		q := own[(i+1)%len(own)]
		if p.X <= x {
			out = append(out, p)
		}
		if (p.X <= x) != (q.X <= x) {
			out = append(out, Point{x, p.Y + (q.Y-p.Y)*(x-p.X)/(q.X-p.X)})
		}
	}
	return out
}

// beyond is the part of a shape right of a cut.
func beyond(own []Point, x float64) []Point {
	return mirrored(before(mirrored(own), -x))
}

func mirrored(points []Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[len(points)-1-i] = Point{-p.X, p.Y}
	}
	return out
}
