package shade

import (
	"fmt"
	"math"
	"testing"

	"garner/internal/place"
	"garner/internal/sun"
)

// garden is a made-up site: obstacles of all kinds round beds in rows.
func garden(beds, obstacles int) (*Scene, []place.Bed) {
	site := place.Site{ID: "a", Location: sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.2}, PlanWidthM: 40, PlanDepthM: 40, UpDeg: 15}
	kinds := []place.FeatureKind{place.Wall, place.DeciduousTree, place.Hedge, place.Building, place.EvergreenTree}
	var features []place.Feature
	for i := range obstacles {
		f := place.Feature{ID: fmt.Sprint("f", i), Site: "a", Kind: kinds[i%len(kinds)], LengthM: 8, WidthM: 0.4, HeightM: 1.5 + float64(i%6)}
		if f.Tree() {
			f.LengthM, f.WidthM, f.BaseM = 4, 4.5, 1
		}
		f.At = place.Spot{XM: float64(i%5)*10 - 1, YM: float64(i/5)*11 - 1, TurnDeg: float64(37 * i)}
		features = append(features, f)
	}
	var all []place.Bed
	for i := range beds {
		all = append(all, place.Bed{ID: fmt.Sprint("b", i), Site: "a", LengthM: 6, WidthM: 1.2, At: place.Spot{XM: 4 + float64(i%5)*8, YM: 2 + float64(i/5)*4.5}})
	}
	scene, _ := NewScene(site, features)
	return scene, all
}

// The points that stand for a bed are enough: a year's light of none of 15 beds
// is out by more than a hundredth, and no tenth by more than six, against twelve
// times as many points.
func TestFinenessIsEnough(t *testing.T) {
	scene, beds := garden(15, 20)
	for _, b := range beds {
		rough, fine := scene.At(Points(&b, bedPoints)), scene.At(Points(&b, 480))
		sum := 0.0
		for k := range Tenths {
			off := Light(rough.Beam[k], rough.Diffuse[k], 0.6) - Light(fine.Beam[k], fine.Diffuse[k], 0.6)
			sum += off / Tenths
			if math.Abs(off) > 0.06 {
				t.Errorf("%s, tenth %d: out by %.3f", b.ID, k, off)
			}
		}
		if math.Abs(sum) > 0.01 {
			t.Errorf("%s: the year is out by %.4f", b.ID, sum)
		}
	}
}

// Points lie within beds of every shape.
func TestPointsLieInTheBed(t *testing.T) {
	for _, b := range []place.Bed{
		{LengthM: 6, WidthM: 1.2, At: place.Spot{XM: 5, YM: 5, TurnDeg: 33}},
		{LengthM: 2, WidthM: 2, Shape: place.Round, At: place.Spot{XM: 5, YM: 5}},
		{LengthM: 3, WidthM: 2, Shape: place.ByOutline, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2", At: place.Spot{XM: 5, YM: 5, TurnDeg: 90}},
		{LengthM: 9, WidthM: 0.3, At: place.Spot{XM: 5, YM: 5}},
	} {
		points := Points(&b, bedPoints)
		for _, p := range points {
			if !place.Contains(b.Corners(), p) {
				t.Errorf("%v lies outside %v", p, b)
			}
		}
		if len(points) < 15 || len(points) > 100 {
			t.Errorf("%d points in %v", len(points), b)
		}
	}
}

func BenchmarkFortyBedsTwentyObstacles(b *testing.B) {
	for range b.N {
		scene, beds := garden(40, 20)
		for _, bed := range beds {
			scene.Bed(bed)
		}
	}
}

func BenchmarkMapOfAMonth(b *testing.B) {
	scene, _ := garden(0, 20)
	site := place.Site{ID: "a", PlanWidthM: 40, PlanDepthM: 40}
	for range b.N {
		scene.Map(site, 4, 0.6)
	}
}
