package place

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A part of a bed has its share of the ground, whatever the shape, and lies within
// the bed; parts side by side make up the whole.
func TestPartsHaveTheirShare(t *testing.T) {
	shapes := []Bed{
		{LengthM: 6, WidthM: 1.2},
		{LengthM: 2, WidthM: 1, Shape: Round},
		{LengthM: 3, WidthM: 2, Shape: ByOutline, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2"},
	}
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.SampledFrom(shapes).Draw(t, "bed")
		b.At = Spot{XM: 10, YM: 5, TurnDeg: rapid.Float64Range(-180, 180).Draw(t, "turn")}
		at := rapid.Float64Range(0, 0.8).Draw(t, "at")
		share := rapid.Float64Range(0.05, 1-at).Draw(t, "share")
		if got, want := Area(b.Part(at, share)), share*Area(b.Corners()); math.Abs(got-want) > 1e-6 {
			t.Fatalf("the part has %v m2, want %v", got, want)
		}
		sum := Area(b.Part(0, at)) + Area(b.Part(at, 1-at))
		if want := Area(b.Corners()); math.Abs(sum-want) > 1e-6 {
			t.Fatalf("the parts have %v m2 together, want %v", sum, want)
		}
	})
}
