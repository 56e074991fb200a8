package place

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestOverlapsByHand(t *testing.T) {
	corners := func(text string) []Point {
		out, ok := ParseOutline(text)
		if !ok {
			t.Fatalf("%s cannot be read", text)
		}
		return out
	}
	ell := "0 0; 3 0; 3 1; 1 1; 1 2; 0 2"
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"0 0; 2 0; 2 2; 0 2", "1 1; 3 1; 3 3; 1 3", 1},
		{"0 0; 2 0; 2 2; 0 2", "2 0; 4 0; 4 2; 2 2", 0},   // side by side
		{"0 0; 2 0; 2 2; 0 2", "0 0; 0 2; 2 2; 2 0", 4},   // the same, the other way round
		{ell, "1 1; 3 1; 3 2; 1 2", 0},                    // in the notch
		{ell, ell, 4},                                     // on itself
		{ell, "0.5 0.5; 2 0.5; 2 1.5; 0.5 1.5", 1},        // across the inner corner
		{"0 0; 4 0; 4 4; 0 4", "1 1; 2 1; 2 2; 1 2", 1},   // one in the other
		{"0 0; 1 0; 1 1; 0 1", "5 5; 6 5; 6 6; 5 6", 0},   // far off
		{"0 0; 2 0; 2 2; 0 2", "1 -1; 3 1; 1 3; -1 1", 4}, // a square on its corner about it
	} {
		if got := OverlapM2(corners(c.a), corners(c.b)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s and %s share %v m2, want %v", c.a, c.b, got, c.want)
		}
	}
}

// A shape shares all its ground with itself; what two share is the same either
// way round and never more than the lesser.
func TestOverlapIsWithinBoth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawnBed(t, "a"), drawnBed(t, "b")
		if got := OverlapM2(a.Corners(), a.Corners()); math.Abs(got-Area(a.Corners())) > 1e-6*(1+got) {
			t.Fatalf("shares %v m2 with itself and has %v", got, Area(a.Corners()))
		}
		one, other := OverlapM2(a.Corners(), b.Corners()), OverlapM2(b.Corners(), a.Corners())
		if math.Abs(one-other) > 1e-6*(1+one) {
			t.Fatalf("%v one way, %v the other", one, other)
		}
		if least := math.Min(Area(a.Corners()), Area(b.Corners())); one > least+1e-6*(1+least) {
			t.Fatalf("%v m2 are shared by beds of %v", one, least)
		}
	})
}

func drawnBed(t *rapid.T, name string) Bed {
	b := Bed{LengthM: rapid.Float64Range(0.1, 9).Draw(t, name+" length"), WidthM: rapid.Float64Range(0.1, 9).Draw(t, name+" width")}
	b.At = Spot{rapid.Float64Range(1, 9).Draw(t, name+" x"), rapid.Float64Range(1, 9).Draw(t, name+" y"), rapid.Float64Range(-360, 360).Draw(t, name+" turn")}
	switch rapid.IntRange(0, 2).Draw(t, name+" shape") {
	case 1:
		b.Shape = Round
	case 2:
		l, w := b.LengthM, b.WidthM
		b.Shape, b.Outline = ByOutline, WriteOutline([]Point{{0, 0}, {l, 0}, {l, w / 2}, {l / 3, w / 2}, {l / 3, w}, {0, w}})
	}
	return b
}
