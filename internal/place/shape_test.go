package place

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestAreasByHand(t *testing.T) {
	for _, c := range []struct {
		bed  Bed
		want float64
	}{
		{Bed{LengthM: 6, WidthM: 1.2}, 7.2},
		{Bed{LengthM: 1, WidthM: 1, Shape: Round}, math.Pi / 4},
		{Bed{LengthM: 3, WidthM: 2, Shape: ByOutline, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2"}, 4},
	} {
		if got := c.bed.AreaM2(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %v m2, want %v", c.bed, got, c.want)
		}
	}
}

func TestOutlines(t *testing.T) {
	for text, crosses := range map[string]bool{"0 0; 2 0; 2 2; 0 2": false, "0 0; 2 2; 2 0; 0 2": true, "0 0; 3 0; 3 1; 1 1; 1 2; 0 2": false,
		"0 0; 3 0; 3 2; 2 2; 2 1; 1 1; 1 2; 0 2": false, // a U, whose two ends lie in one line
		"0 0; 4 0; 4 2; 1 2; 1 1; 3 1; 3 2; 0 2": true,  // the ends lie over each other
		"0 0; 3 0; 3 2; 2 0; 1 2; 0 2":           true,  // a corner on another side
	} {
		corners, ok := ParseOutline(text)
		if !ok || CrossesItself(corners) != crosses {
			t.Errorf("%s: read %v, crosses %v", text, ok, !crosses)
		}
		if again := WriteOutline(corners); again != text {
			t.Errorf("%s is written %s", text, again)
		}
	}
	for _, text := range []string{"", "0 0; 1 1", "0 0; 1; 2 2", "a b; 1 1; 2 2", "NaN 0; 1 1; 2 2"} {
		if _, ok := ParseOutline(text); ok {
			t.Errorf("%q was read", text)
		}
	}
}

// Turning and moving a shape keep its ground and what lies in it.
func TestMovingKeepsGround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bed{LengthM: rapid.Float64Range(0.1, 20).Draw(t, "length"), WidthM: rapid.Float64Range(0.1, 20).Draw(t, "width")}
		b.At = Spot{rapid.Float64Range(1, 50).Draw(t, "x"), rapid.Float64Range(1, 50).Draw(t, "y"), rapid.Float64Range(-360, 360).Draw(t, "turn")}
		corners := b.Corners()
		if got := Area(corners); math.Abs(got-b.AreaM2()) > 1e-6*(1+b.AreaM2()) {
			t.Fatalf("%v m2, want %v", got, b.AreaM2())
		}
		if !Contains(corners, Point{b.At.XM, b.At.YM}) {
			t.Fatal("the middle lies outside")
		}
	})
}

func FuzzParseOutline(f *testing.F) {
	f.Add("0 0; 3 0; 3 1; 1 1; 1 2; 0 2")
	f.Add(";;")
	f.Fuzz(func(t *testing.T, text string) {
		if corners, ok := ParseOutline(text); ok {
			if again, ok := ParseOutline(WriteOutline(corners)); !ok || len(again) != len(corners) {
				t.Errorf("%q is not read again", text)
			}
		}
	})
}
