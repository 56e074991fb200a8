package shade

import (
	"math"

	"garner/internal/place"
)

// bedPoints is about how many points stand for a bed. Against twelve times as
// many they keep a year's light within a hundredth (TestFinenessIsEnough); with
// 24 it was out by up to 0.016 beside a tree.
const bedPoints = 40

// Points returns about n points spread evenly over a bed in its own axes, at
// least two each way; of an outline those that lie within it.
func Points(b *place.Bed, n int) []place.Point {
	corners := b.Corners()
	sin, cos := math.Sincos(b.At.TurnDeg * degree)
	side := math.Sqrt(b.LengthM * b.WidthM / float64(n))
	if full := b.LengthM * b.WidthM; full > 0 {
		side *= math.Sqrt(b.AreaM2() / full)
	}
	along, across := parts(b.LengthM, side), parts(b.WidthM, side)
	var out []place.Point
	for i := range along {
		for k := range across {
			x := ((float64(i)+0.5)/float64(along) - 0.5) * b.LengthM
			y := ((float64(k)+0.5)/float64(across) - 0.5) * b.WidthM
			p := place.Point{X: b.At.XM + x*cos - y*sin, Y: b.At.YM + x*sin + y*cos}
			if b.Shape == "" || b.Shape == place.Rectangle || place.Contains(corners, p) {
				out = append(out, p)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, corners...) // an outline thinner than the points lie apart
	}
	return out
}

// mostParts keeps a bed of odd shape from being cut to dust.
const mostParts = 60

func parts(length, side float64) int {
	if !(side > 0) {
		return 2
	}
	return int(max(2, min(mostParts, math.Round(length/side))))
}
