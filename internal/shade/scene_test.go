package shade_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/shade"
	"garner/internal/sun"
	"pgregory.net/rapid"
)

func siteAt(latitudeDeg, upDeg float64) place.Site {
	return place.Site{ID: "a", Location: sun.Location{LatitudeDeg: latitudeDeg}, PlanWidthM: 20, PlanDepthM: 20, UpDeg: upDeg}
}

// A bed due north of a wall at 52 N gets no beam at noon in December out to the
// shadow's length, 1.8 m / tan(14.6 degrees) = 6.9 m: the wall is made so long
// that the whole of the short day is noon to it. Beyond, noon is open.
func TestNorthOfAWallInDecember(t *testing.T) {
	site := siteAt(52, 0)
	wall := place.Feature{ID: "w", Site: "a", Kind: place.Wall, At: place.Spot{XM: 10, YM: 0}, LengthM: 2000, WidthM: 0.2, HeightM: 1.8}
	scene, _ := shade.NewScene(site, []place.Feature{wall})
	const solstice = 35 // the last tenth of December
	for _, north := range []float64{0.5, 2, 4} {
		if beam := scene.At([]place.Point{{X: 10, Y: north}}).Beam[solstice]; beam > 0.001 {
			t.Errorf("%v m north of the wall %.2f of the beam is left", north, beam)
		}
	}
	noon := sun.PositionAt(site.Location, int64(cal.Of(2002, 12, 26))*86400+12*3600)
	shadow := 1.8 / math.Tan(noon.ElevationDeg*math.Pi/180)
	if math.Abs(shadow-6.9) > 0.15 {
		t.Fatalf("the noon shadow is %.2f m long", shadow)
	}
	short := wall
	short.LengthM = 6 // only the noon sun stands behind it
	noonOnly, _ := shade.NewScene(site, []place.Feature{short})
	inside, beyond := noonOnly.At([]place.Point{{X: 10, Y: shadow - 0.4}}), noonOnly.At([]place.Point{{X: 10, Y: shadow + 1}})
	if inside.Beam[solstice] > 0.9 || beyond.Beam[solstice] < 0.999 {
		t.Errorf("within the noon shadow %.3f of the beam, beyond it %.3f", inside.Beam[solstice], beyond.Beam[solstice])
	}
	if south := scene.At([]place.Point{{X: 10, Y: -2}}); south.Beam[solstice] < 0.999 || south.Diffuse[solstice] > 0.9 {
		t.Errorf("south of the wall %.3f of the beam, %.3f of the sky", south.Beam[solstice], south.Diffuse[solstice])
	}
}

// South of the equator the sun stands in the north, and June is winter.
func TestSouthernWall(t *testing.T) {
	scene, _ := shade.NewScene(siteAt(-43, 0), []place.Feature{{ID: "w", Site: "a", Kind: place.Wall, At: place.Spot{XM: 10, YM: 0}, LengthM: 200, WidthM: 0.2, HeightM: 1.8}})
	north, south := scene.At([]place.Point{{X: 10, Y: 1.5}}), scene.At([]place.Point{{X: 10, Y: -1.5}})
	const june, december = 17, 35
	if north.Beam[june] < 0.999 || south.Beam[june] > 0.05 || south.Beam[december] < 0.6 {
		t.Errorf("north of the wall %.2f in June; south of it %.2f in June, %.2f in December", north.Beam[june], south.Beam[june], south.Beam[december])
	}
}

// A tree that drops its leaves lets half the light through in winter, where it
// stands in summer at an eighth.
func TestBareTreeLetsLightThrough(t *testing.T) {
	tree := place.Feature{ID: "t", Site: "a", Kind: place.DeciduousTree, At: place.Spot{XM: 10, YM: 10}, LengthM: 8, WidthM: 8, HeightM: 9, BaseM: 2}
	bare := tree
	bare.ThroughLeaf, bare.ThroughBare = 0.5, 0.5
	leafy, _ := shade.NewScene(siteAt(52, 0), []place.Feature{tree})
	always, _ := shade.NewScene(siteAt(52, 0), []place.Feature{bare})
	under := []place.Point{{X: 10, Y: 12}}
	a, b := leafy.At(under), always.At(under)
	const january, july = 1, 19
	if math.Abs(a.Beam[january]-b.Beam[january]) > 1e-9 || math.Abs(a.Diffuse[january]-b.Diffuse[january]) > 1e-9 {
		t.Errorf("bare it lets %.3f through, %.3f was told", a.Beam[january], b.Beam[january])
	}
	if a.Diffuse[july] > b.Diffuse[july]-0.1 {
		t.Errorf("in leaf %.3f of the sky, bare %.3f", a.Diffuse[july], b.Diffuse[july])
	}
}

func anyFeature(t *rapid.T, name string) place.Feature {
	kinds := []place.FeatureKind{place.Wall, place.Fence, place.Hedge, place.Building, place.DeciduousTree, place.EvergreenTree}
	f := place.Feature{ID: name, Site: "a", Name: name, Kind: rapid.SampledFrom(kinds).Draw(t, name+" kind"),
		LengthM: rapid.Float64Range(0.1, 15).Draw(t, name+" length"), WidthM: rapid.Float64Range(0.1, 6).Draw(t, name+" width"),
		HeightM: rapid.Float64Range(0.3, 12).Draw(t, name+" height"), ThroughLeaf: rapid.Float64Range(0, 1).Draw(t, name+" through")}
	f.At = place.Spot{XM: rapid.Float64Range(-5, 25).Draw(t, name+" x"), YM: rapid.Float64Range(-5, 25).Draw(t, name+" y"), TurnDeg: rapid.Float64Range(-180, 180).Draw(t, name+" turn")}
	f.BaseM = f.HeightM * rapid.Float64Range(0, 0.9).Draw(t, name+" base")
	return f
}

// Taking something away never lowers the light, and all light lies within 0-1.
func TestRemovingAnObstacleNeverLowersLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site := siteAt(rapid.Float64Range(-60, 60).Draw(t, "latitude"), rapid.Float64Range(0, 360).Draw(t, "up"))
		var all []place.Feature
		for i := range rapid.IntRange(1, 5).Draw(t, "features") {
			all = append(all, anyFeature(t, string(rune('a'+i))))
		}
		scene, faults := shade.NewScene(site, all)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		at := []place.Point{{X: rapid.Float64Range(0, 20).Draw(t, "x"), Y: rapid.Float64Range(0, 20).Draw(t, "y")}}
		gone := rapid.IntRange(0, len(all)-1).Draw(t, "gone")
		with, without := scene.At(at), scene.Without(gone).At(at)
		for k := range shade.Tenths {
			if with.Beam[k] > without.Beam[k]+1e-12 || with.Diffuse[k] > without.Diffuse[k]+1e-12 {
				t.Fatalf("tenth %d: with it %v and %v, without %v and %v", k, with.Beam[k], with.Diffuse[k], without.Beam[k], without.Diffuse[k])
			}
			for _, v := range []float64{with.Beam[k], with.Diffuse[k]} {
				if !(v >= 0 && v <= 1) {
					t.Fatalf("a share of %v", v)
				}
			}
		}
	})
}

// turned is a spot after the whole plan was turned anticlockwise about its corner.
func turned(s place.Spot, deg float64) place.Spot {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return place.Spot{XM: s.XM*cos - s.YM*sin, YM: s.XM*sin + s.YM*cos, TurnDeg: s.TurnDeg + deg}
}

// Drawing the plan another way up changes nothing: everything turned
// anticlockwise, and the top turned along with it.
func TestTurningThePlanChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lat := rapid.Float64Range(-60, 60).Draw(t, "latitude")
		up, turn := rapid.Float64Range(0, 360).Draw(t, "up"), rapid.Float64Range(-180, 180).Draw(t, "turn")
		f := anyFeature(t, "f")
		bed := place.Bed{ID: "b", Site: "a", LengthM: 4, WidthM: 1.2, At: place.Spot{XM: 9, YM: 8, TurnDeg: 30}}
		one, _ := shade.NewScene(siteAt(lat, up), []place.Feature{f})
		f.At = turned(f.At, turn)
		other, _ := shade.NewScene(siteAt(lat, up+turn), []place.Feature{f})
		a := one.Bed(bed)
		bed.At = turned(bed.At, turn)
		b := other.Bed(bed)
		for k := range shade.Tenths {
			if math.Abs(a.Beam[k]-b.Beam[k]) > 1e-6 || math.Abs(a.Diffuse[k]-b.Diffuse[k]) > 1e-6 {
				t.Fatalf("tenth %d: %v and %v, turned %v and %v", k, a.Beam[k], a.Diffuse[k], b.Beam[k], b.Diffuse[k])
			}
		}
	})
}

// A thing that cannot throw shade as it is told is named, and the rest stands.
func TestWhatThrowsNoShadeIsNamed(t *testing.T) {
	for key, f := range map[string]place.Feature{
		"shade.no_height":      {Kind: place.Wall, LengthM: 3, WidthM: 1},
		"shade.no_ground":      {Kind: place.Hedge, HeightM: 2, LengthM: 3},
		"shade.base_above_top": {Kind: place.EvergreenTree, HeightM: 2, BaseM: 3, LengthM: 3, WidthM: 3},
	} {
		f.ID, f.Site = "f", "a"
		wall := place.Feature{ID: "w", Site: "a", Kind: place.Wall, LengthM: 5, WidthM: 1, HeightM: 2}
		path := place.Feature{ID: "p", Site: "a", Kind: place.Path, LengthM: 5, WidthM: 1}
		far := place.Feature{ID: "x", Site: "elsewhere", Kind: place.Wall}
		scene, faults := shade.NewScene(siteAt(52, 0), []place.Feature{f, wall, path, far})
		if len(faults) != 1 || faults[0].Phrase.Key != key || len(scene.Features()) != 1 || scene.Features()[0] != 1 {
			t.Errorf("%s: faults %v, features %v", key, faults, scene.Features())
		}
	}
}

// Days between the tenths lie on the line between them, round the turn of the
// year too, and months are their days' mean.
func TestDaysAndMonths(t *testing.T) {
	var y shade.Year
	for k := range shade.Tenths {
		y.Beam[k], y.Diffuse[k] = float64(k)/shade.Tenths, 1
	}
	last := 0.0
	for day := 6; day <= 360; day++ {
		beam, diffuse := y.OnDay(day)
		if beam < last || diffuse != 1 {
			t.Fatalf("day %d: %v after %v, %v", day, beam, last, diffuse)
		}
		last = beam
	}
	first, _ := y.OnDay(1)
	if end, _ := y.OnDay(365); !(first < end && first > y.Beam[0] && end < y.Beam[shade.Tenths-1]) {
		t.Errorf("over New Year: %v then %v", end, first)
	}
	months := y.Months([12]float64{1, 0})
	if math.Abs(months[0]-1) > 1e-9 || math.Abs(months[1]-4.0/36) > 0.005 {
		t.Errorf("January %v, February %v", months[0], months[1])
	}
}

// The map agrees with the points it is made of, and an undrawn site has none.
func TestMapAgreesWithPoints(t *testing.T) {
	site := siteAt(52, 0)
	scene, _ := shade.NewScene(site, []place.Feature{{ID: "w", Site: "a", Kind: place.Wall, At: place.Spot{XM: 10, YM: 5}, LengthM: 12, WidthM: 0.3, HeightM: 2}})
	g := scene.Map(site, 3, 0.6)
	column, row := 20, 14
	y := scene.At([]place.Point{{X: float64(column) * g.StepM, Y: float64(row) * g.StepM}})
	want := 0.0
	for k := 6; k < 9; k++ {
		want += shade.Light(y.Beam[k], y.Diffuse[k], 0.6) / 3
	}
	if got := g.Light[row*g.Columns+column]; math.Abs(got-want) > 1e-9 || len(g.Light) != g.Columns*g.Rows || g.LeastLight > 0.8 {
		t.Errorf("%v on the map, %v at the point; %d points, least %v", got, want, len(g.Light), g.LeastLight)
	}
	site.PlanWidthM = 0
	if g := scene.Map(site, 3, 0.6); len(g.Light) != 0 {
		t.Errorf("an undrawn site has %d points", len(g.Light))
	}
}
