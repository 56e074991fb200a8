package place

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Point is a place on a site's plan [m], from its left and bottom edge.
type Point struct{ X, Y float64 }

// roundCorners is how many corners a round bed is drawn and measured with.
const roundCorners = 32

// AreaM2 is the bed's ground [m2].
func (b Bed) AreaM2() float64 {
	switch b.Shape {
	case Round:
		return math.Pi / 4 * b.LengthM * b.WidthM
	case ByOutline:
		if corners, ok := ParseOutline(b.Outline); ok {
			return Area(corners)
		}
	}
	return b.LengthM * b.WidthM
}

// Corners are the bed's corners on the plan, in order; of a round bed, corners
// on its edge. A bed that is not drawn lies about the plan's corner.
func (b Bed) Corners() []Point {
	var own []Point
	switch b.Shape {
	case Round:
		own = oval(b.LengthM, b.WidthM)
	case ByOutline:
		if corners, ok := ParseOutline(b.Outline); ok {
			own = shifted(corners, -b.LengthM/2, -b.WidthM/2)
			break
		}
		fallthrough
	default:
		own = box(b.LengthM, b.WidthM)
	}
	return b.At.place(own)
}

// Corners are the feature's corners on the plan; of a tree, corners on the edge
// of its crown.
func (f Feature) Corners() []Point {
	if f.Tree() {
		return f.At.place(oval(f.LengthM, f.WidthM))
	}
	return f.At.place(box(f.LengthM, f.WidthM))
}

// Tree tells whether the feature is a tree with a crown.
func (f Feature) Tree() bool { return f.Kind == DeciduousTree || f.Kind == EvergreenTree }

// box is a rectangle about the middle.
func box(length, width float64) []Point {
	l, w := length/2, width/2
	return []Point{{-l, -w}, {l, -w}, {l, w}, {-l, w}}
}

func oval(length, width float64) []Point {
	out := make([]Point, roundCorners)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / roundCorners)
		out[i] = Point{length / 2 * cos, width / 2 * sin}
	}
	return out
}

func shifted(points []Point, x, y float64) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = Point{p.X + x, p.Y + y}
	}
	return out
}

// place turns points about the middle and carries them to the spot.
func (s Spot) place(own []Point) []Point {
	sin, cos := math.Sincos(s.TurnDeg * math.Pi / 180)
	out := make([]Point, len(own))
	for i, p := range own {
		out[i] = Point{s.XM + p.X*cos - p.Y*sin, s.YM + p.X*sin + p.Y*cos}
	}
	return out
}

// Area is the ground within corners [m2], whichever way round they run.
func Area(corners []Point) float64 {
	sum := 0.0
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}

// Contains tells whether a point lies within corners (even-odd rule).
func Contains(corners []Point, at Point) bool {
	inside := false
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		if (p.Y > at.Y) != (q.Y > at.Y) && at.X < (q.X-p.X)*(at.Y-p.Y)/(q.Y-p.Y)+p.X {
			inside = !inside
		}
	}
	return inside
}

// CornerTwice finds a corner that stands twice in an outline.
func CornerTwice(corners []Point) (Point, bool) {
	for i, p := range corners {
		if slices.Contains(corners[:i], p) {
			return p, true
		}
	}
	return Point{}, false
}

// CrossesItself tells whether sides of an outline cross each other.
func CrossesItself(corners []Point) bool {
	n := len(corners)
	for i := range n {
		for k := i + 2; k < n; k++ {
			if (k+1)%n != i && cross(corners[i], corners[(i+1)%n], corners[k], corners[(k+1)%n]) {
				return true
			}
		}
	}
	return false
}

// cross tells whether two lines meet. Lines in line with each other meet only
// where the boxes about them do.
func cross(a, b, c, d Point) bool {
	return side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0 &&
		max(min(a.X, b.X), min(c.X, d.X)) <= min(max(a.X, b.X), max(c.X, d.X)) &&
		max(min(a.Y, b.Y), min(c.Y, d.Y)) <= min(max(a.Y, b.Y), max(c.Y, d.Y))
}

// side is positive where p lies left of the line from a to b.
func side(a, b, p Point) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }

// mostCorners is how many corners an outline may have.
const mostCorners = 60

// ParseOutline reads corners written as "x y; x y; x y" [m]. It is false when
// they cannot be read or are fewer than three.
func ParseOutline(text string) ([]Point, bool) {
	var out []Point
	for _, piece := range strings.Split(text, ";") {
		numbers := strings.Fields(piece)
		if len(numbers) == 0 {
			continue
		}
		if len(numbers) != 2 || len(out) >= mostCorners {
			return nil, false
		}
		x, errX := strconv.ParseFloat(numbers[0], 64)
		y, errY := strconv.ParseFloat(numbers[1], 64)
		if errX != nil || errY != nil || math.Abs(x) > 1e4 || math.Abs(y) > 1e4 || x != x || y != y {
			return nil, false
		}
		out = append(out, Point{x, y})
	}
	return out, len(out) >= 3
}

// WriteOutline writes corners as ParseOutline reads them, to the centimetre.
func WriteOutline(corners []Point) string {
	pieces := make([]string, len(corners))
	for i, p := range corners {
		pieces[i] = centimetres(p.X) + " " + centimetres(p.Y)
	}
	return strings.Join(pieces, "; ")
}

func centimetres(m float64) string {
	return strconv.FormatFloat(math.Round(m*100)/100+0, 'f', -1, 64)
}
