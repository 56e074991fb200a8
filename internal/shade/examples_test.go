package shade

import (
	"math"
	"strings"
	"testing"

	"garner/internal/place"
	"garner/internal/sun"
)

// longWallM is long enough to stand for a wall without ends.
const longWallM = 200000

// wall is a scene with one thin wall along the plan, its north face at y = 0, the
// plan's top to the north at 51.5 N.
func wall(heightM float64) *Scene {
	return sceneOf(place.Site{ID: "a", Location: sun.Location{LatitudeDeg: 51.5}},
		place.Feature{ID: "w", Site: "a", Kind: place.Wall, At: place.Spot{YM: -0.05}, LengthM: longWallM, WidthM: 0.1, HeightM: heightM})
}

func sceneOf(site place.Site, features ...place.Feature) *Scene {
	for i := range features {
		features[i].Site = site.ID
	}
	s, _ := NewScene(site, features)
	return s
}

// lit tells whether a point gets the beam from an azimuth and height.
func (s *Scene) lit(p place.Point, azimuthDeg, elevationDeg float64) bool {
	var e eye
	e.look(s.obstacles, p.X, p.Y)
	return passes(e.seen, rayTo(0, azimuthDeg, elevationDeg), 0) > 0.5
}

// skyView is the share of an even sky that a point sees in the first tenth.
func (s *Scene) skyView(p place.Point) float64 {
	var e eye
	if !e.look(s.obstacles, p.X, p.Y) {
		return 1
	}
	round := roundOf(0)
	out := []float64{0}
	e.diffuse(&round, []int{0}, out)
	return out[0]
}

// shadowEnds finds how far north of the wall its shadow reaches [m].
func (s *Scene) shadowEnds(azimuthDeg, elevationDeg float64) float64 {
	low, high := 0.0, 1000.0
	for range 60 {
		middle := (low + high) / 2
		if s.lit(place.Point{Y: middle}, azimuthDeg, elevationDeg) {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}

// The rays themselves draw the shadows of the worked examples: length, profile
// angle and depth behind a wall, and single points (testdata/examples.csv: by
// the formula beside each row).
func TestShadowExamples(t *testing.T) {
	count := map[string]int{}
	for _, r := range published(t, "examples.csv") {
		in := figures(t, r["inputs"])
		var got float64
		switch r["topic"] {
		case "shadow length":
			got = wall(in[0]).shadowEnds(180, in[1])
		case "noon shadow":
			got = wall(in[2]).shadowEnds(180, 90-in[0]+in[1])
		case "profile angle":
			got = math.Atan(1/wall(1).shadowEnds(180+in[1], in[0])) / degree
		case "shadow depth behind wall":
			got = wall(in[0]).shadowEnds(180-in[2], in[1])
		case "point shaded by long wall":
			if !wall(in[0]).lit(place.Point{Y: in[1]}, 180+in[3], in[2]) {
				got = 1
			}
		default:
			continue
		}
		count[r["topic"]]++
		near(t, r["id"]+" "+r["topic"]+" "+r["inputs"], got, number(t, r["expected"]), number(t, r["tolerance"]))
	}
	if count["shadow length"] < 21 || count["noon shadow"] < 12 || count["profile angle"] < 7 || count["point shaded by long wall"] < 4 {
		t.Errorf("rows are missing: %v", count)
	}
}

// ring is a scene with a round horizon of one height about the plan's corner.
func ring(elevationDeg float64) *Scene {
	const sides, distance = 72, 50.0
	var all []place.Feature
	for i := range sides {
		turn := 360 * (float64(i) + 0.5) / sides
		sin, cos := math.Sincos(turn * degree)
		all = append(all, place.Feature{Kind: place.Wall, At: place.Spot{XM: (distance + 0.05) * cos, YM: (distance + 0.05) * sin, TurnDeg: turn + 90},
			LengthM: 10, WidthM: 0.1, HeightM: distance * math.Tan(elevationDeg*degree)})
	}
	return sceneOf(place.Site{ID: "a", Location: sun.Location{LatitudeDeg: 51.5}}, all...)
}

// Closed forms of the sky's view from level ground: a horizon of one height,
// a wall without end, a street between two walls.
func TestSkyViewExamples(t *testing.T) {
	count := 0
	for _, r := range published(t, "examples.csv") {
		in := figures(t, r["inputs"])
		var got, tolerance float64
		switch topic := r["topic"]; {
		case strings.HasPrefix(topic, "SVF horizontal") && in[0] > 0 && in[0] < 90:
			got, tolerance = ring(in[0]).skyView(place.Point{}), 0.001 // the ring has corners
		case topic == "SVF beside infinite wall" && in[0] > 0 && in[0] < 90:
			got, tolerance = wall(math.Tan(in[0]*degree)).skyView(place.Point{Y: 1}), 0.001
		case topic == "SVF distance from infinite wall":
			got, tolerance = wall(in[0]).skyView(place.Point{Y: in[1]}), 0.001
		case topic == "SVF canyon centre":
			got, tolerance = street(in[0], in[1]).skyView(place.Point{}), 0.001
		default:
			continue
		}
		count++
		near(t, r["id"]+" "+r["topic"]+" "+r["inputs"], got, number(t, r["expected"]), tolerance)
	}
	if count != 18 {
		t.Errorf("%d rows were checked", count)
	}
}

// street is a scene between two long walls.
func street(heightM, widthM float64) *Scene {
	one := place.Feature{Kind: place.Wall, At: place.Spot{YM: widthM/2 + 0.05}, LengthM: longWallM, WidthM: 0.1, HeightM: heightM}
	other := one
	other.At.YM = -one.At.YM
	return sceneOf(place.Site{ID: "a", Location: sun.Location{LatitudeDeg: 51.5}}, one, other)
}

// The diffuse share of a day, and a bed's light from its parts (Erbs et al.
// 1982, the daily correlation).
func TestCombinedLightExamples(t *testing.T) {
	for _, r := range published(t, "examples.csv") {
		in := figures(t, r["inputs"])
		want, tolerance := number(t, r["expected"]), number(t, r["tolerance"])
		switch r["topic"] {
		case "Erbs daily diffuse fraction":
			near(t, r["id"], sun.DiffuseShare(in[0], in[1]*degree), want, tolerance)
		case "bed under obstruction":
			share := sun.DiffuseShare(in[0], in[2]*degree)
			near(t, r["id"], in[0]*in[1]*Light(in[4], in[3], share), want, tolerance)
		}
	}
}

// Half way through leaf-out half the leaf takes its light (worked example C185),
// and in between the ramp is straight.
func TestLeafRamp(t *testing.T) {
	days := leafDays{on: 120, off: 310}
	for _, c := range []struct{ day, share float64 }{
		{100, 0}, {106, 0}, {113, 0.25}, {120, 0.5}, {134, 1}, {200, 1}, {296, 1}, {310, 0.5}, {317, 0.25}, {324, 0}, {365, 0}, {1, 0}} {
		near(t, "leaf on day", days.share(c.day), c.share, 1e-9)
	}
	near(t, "C185", 0.45+(0.05-0.45)*days.share(120), 0.25, 1e-6)
	south := leafDaysOf(&place.Feature{}, false)
	if south.share(20) != 1 || south.share(200) != 0 {
		t.Errorf("the southern tree is in leaf %v in January, %v in July", south.share(20), south.share(200))
	}
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.5f, want %.5f within %v", what, got, want, tolerance)
	}
}
