package shade_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/place"
	"garner/internal/shade"
	"garner/internal/sun"
)

// The integration below knows nothing of the package but its results: the sun is
// where a general library of astronomy puts it (testdata/sun_positions.csv,
// every ten minutes of three days at two places), and a ray is walked in steps
// of a centimetre or two through things told as "is this point within it".

type moment struct{ azimuth, elevation float64 }

// ways are the sun's ways by place and day, and the places.
func ways(t *testing.T) (map[string]map[string][]moment, map[string]sun.Location) {
	t.Helper()
	f, err := os.Open("testdata/sun_positions.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out, at := map[string]map[string][]moment{}, map[string]sun.Location{}
	for _, l := range lines[1:] {
		var v [4]float64
		for i, k := range []int{1, 2, 4, 5} {
			if v[i], err = strconv.ParseFloat(l[k], 64); err != nil {
				t.Fatal(err)
			}
		}
		if out[l[0]] == nil {
			out[l[0]] = map[string][]moment{}
		}
		out[l[0]][l[3]] = append(out[l[0]][l[3]], moment{v[2] * math.Pi / 180, v[3] * math.Pi / 180})
		at[l[0]] = sun.Location{LatitudeDeg: v[0], LongitudeDeg: v[1]}
	}
	return out, at
}

// solid tells how far light fades in each metre at a point of the garden [1/m].
type solid func(x, y, z float64) float64

// walked is the share of light that comes to a point from a direction.
func walked(s solid, x, y, east, north, up float64) float64 {
	const stepM, farM = 0.02, 45.0
	faded := 0.0
	for d := stepM / 2; d < farM && d*up < 12; d += stepM {
		faded += s(x+d*east, y+d*north, d*up) * stepM
		if faded > 20 {
			return 0
		}
	}
	return math.Exp(-faded)
}

// insolation is the share of a clear day's beam that a point gets, by the beam of
// Meinel & Meinel 1976 and a plain air mass.
func insolation(s solid, day []moment, x, y, upDeg float64) float64 {
	got, all := 0.0, 0.0
	for _, m := range day {
		up := math.Sin(m.elevation)
		beam := up * math.Pow(0.7, math.Pow(1/(up+0.15*math.Pow(m.elevation*180/math.Pi+3.885, -1.253)), 0.678)) // Kasten 1965
		a := m.azimuth - upDeg*math.Pi/180
		level := math.Cos(m.elevation)
		got += beam * walked(s, x, y, level*math.Sin(a), level*math.Cos(a), up)
		all += beam
	}
	return got / all
}

// A garden with a wall, turned, and a tree: what reaches three points on a
// December, a March and a June day, north and south, on plans drawn two ways up.
func TestDayBehindAWallAgainstIndependentIntegration(t *testing.T) {
	wall := place.Feature{ID: "w", Kind: place.Wall, At: place.Spot{XM: 8, YM: 5, TurnDeg: 20}, LengthM: 9, WidthM: 0.3, HeightM: 2}
	pear := place.Feature{ID: "p", Kind: place.EvergreenTree, At: place.Spot{XM: 13, YM: 9}, LengthM: 4, WidthM: 3, HeightM: 5, BaseM: 1, ThroughLeaf: 0.2}
	sin, cos := math.Sincos(20 * math.Pi / 180)
	way := 2 * math.Cbrt(2*1.5*2)
	garden := func(x, y, z float64) float64 {
		dx, dy := x-8, y-5
		if u, v := dx*cos+dy*sin, dy*cos-dx*sin; math.Abs(u) < 4.5 && math.Abs(v) < 0.15 && z < 2 {
			return 1000
		}
		if a, b, c := (x-13)/2, (y-9)/1.5, (z-3)/2; a*a+b*b+c*c < 1 {
			return -math.Log(0.2) / way
		}
		return 0
	}
	all, at := ways(t)
	tenth := map[string]int{"2026-03-15": 7, "2026-06-15": 16, "2026-12-15": 34}
	checked, dimmed := 0, 0
	for name, location := range at {
		for _, upDeg := range []float64{0, 130} {
			site := place.Site{ID: "a", Location: location, UpDeg: upDeg}
			wall.Site, pear.Site = "a", "a"
			scene, faults := shade.NewScene(site, []place.Feature{wall, pear})
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			for day, moments := range all[name] {
				for _, p := range []place.Point{{X: 8, Y: 6.2}, {X: 10, Y: 9}, {X: 7, Y: 3.5}} {
					year := scene.At([]place.Point{p})
					got, want := year.Beam[tenth[day]], insolation(garden, moments, p.X, p.Y, upDeg)
					if math.Abs(got-want) > 0.035 { // a quarter of an hour at noon of a short day is 0.05 of its beam
						t.Errorf("%s %s, top towards %v, at %v: %.3f of the beam, integrated apart %.3f", name, day, upDeg, p, got, want)
					}
					checked++
					if want < 0.9 {
						dimmed++
					}
				}
			}
		}
	}
	if checked != 36 || dimmed < 12 {
		t.Errorf("%d points, %d of them in shade", checked, dimmed)
	}
}
