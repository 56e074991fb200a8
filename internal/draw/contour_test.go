package draw

import (
	"math"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/place"
	"garner/internal/shade"
)

// gridOf is a view whose light is told by a function of the plan.
func gridOf(light func(x, y float64) float64) *desk.ShadeView {
	v := &desk.ShadeView{Month: 3, Map: shade.Grid{StepM: 0.25, Columns: 41, Rows: 41, WidthM: 10, DepthM: 10}}
	for r := range 41 {
		for c := range 41 {
			v.Map.Light = append(v.Map.Light, light(float64(c)/4, float64(r)/4))
		}
	}
	return v
}

func areaOf(loop []spot) float64 {
	sum := 0.0
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		sum += p.x*q.y - q.x*p.y
	}
	return math.Abs(sum) / 2
}

// The line round a round shadow is a circle: its area that of the circle, within
// the squares it is made of.
func TestLinesRoundARoundShadow(t *testing.T) {
	v := gridOf(func(x, y float64) float64 { return math.Min(1, math.Hypot(x-5, y-4)/4) })
	f := fieldOf(v, 10)
	for _, level := range []float64{0.25, 0.5, 0.75} {
		loops := f.loops(level)
		want := math.Pi * math.Pow(40*level, 2)
		if len(loops) != 1 || math.Abs(areaOf(loops[0])-want) > 0.03*want {
			t.Errorf("level %v: %d lines, area %v, want %v", level, len(loops), areaOf(loops[0]), want)
		}
	}
	if loops := f.loops(0); len(loops) != 0 {
		t.Errorf("%d lines under nothing", len(loops))
	}
}

// A shadow that reaches the edge is closed along it, and the edge is not drawn as
// a line of equal light.
func TestShadowAtTheEdge(t *testing.T) {
	f := fieldOf(gridOf(func(x, _ float64) float64 { return math.Min(1, 0.1+x/10) }), 10)
	loops := f.loops(0.6)
	if len(loops) != 1 || math.Abs(areaOf(loops[0])-5000) > 30 {
		t.Fatalf("%d lines, area %v", len(loops), areaOf(loops[0]))
	}
	drawn := line(loops)
	if strings.Count(drawn, "M") != 1 || strings.Contains(drawn, "M0 ") || strings.Contains(drawn, "H0") {
		t.Errorf("the edge is drawn: %s", drawn)
	}
}

// Two shadows that all but touch stay two lines or become one, and every line
// closes.
func TestSaddles(t *testing.T) {
	for _, gap := range []float64{1.4, 1.9, 2.2} {
		f := fieldOf(gridOf(func(x, y float64) float64 {
			return math.Min(1, math.Min(math.Hypot(x-5+gap/2, y-5+gap/2), math.Hypot(x-5-gap/2, y-5-gap/2)))
		}), 10)
		sum := 0
		for _, loop := range f.loops(0.9) {
			sum++
			last, first := loop[len(loop)-1], loop[0]
			if math.Hypot(last.x-first.x, last.y-first.y) > 4 {
				t.Errorf("gap %v: a line does not close", gap)
			}
		}
		if sum < 1 || sum > 2 {
			t.Errorf("gap %v: %d lines", gap, sum)
		}
	}
}

// The map tells everything in words and leaves nothing out: the light of each
// bed, the thing that stands there, a dotted crown that is bare, and labels on
// its lines.
func TestLightMapIsLabelled(t *testing.T) {
	v := gridOf(func(x, _ float64) float64 { return math.Min(1, 0.3+x/8) })
	v.Beds = []desk.ShadedBed{{Bed: place.Bed{ID: "b", Name: "Bed 1", LengthM: 4, WidthM: 1, At: place.Spot{XM: 7, YM: 8}}, Light: [12]float64{2: 0.87}}}
	v.Features = []desk.ShadeFeature{{Bare: true, Feature: place.Feature{Name: "Pear", Kind: place.DeciduousTree, At: place.Spot{XM: 7, YM: 3}, LengthM: 3, WidthM: 3}}}
	percent := func(share float64) string { return whole(int(math.Round(100*share))) + " %" }
	drawn := LightMap(v, LightMapOptions{WidthPX: 600, Label: "the <map>", Percent: percent, North: "N",
		Metres:  func(m float64) string { return whole(int(m)) + " m" },
		Bed:     func(b *desk.ShadedBed) []string { return []string{b.Name + " " + percent(b.Light[2])} },
		Feature: func(f *desk.ShadeFeature) []string { return []string{f.Name} }})
	for _, want := range []string{`aria-label="the &lt;map&gt;"`, ">Bed 1 87 %<", ">Pear<", "light-crown bare", ">90 %<", ">75 %<", ">60 %<", ">40 %<", ">N<", ">2 m<", `class="lit4"`} {
		if !strings.Contains(drawn, want) {
			t.Errorf("the map has no %s", want)
		}
	}
	if LightMap(&desk.ShadeView{}, LightMapOptions{}) != "" {
		t.Error("something is drawn without a plan")
	}
	bare := &desk.GroundYearView{Site: place.Site{PlanWidthM: 10, PlanDepthM: 10}}
	if under := Plan(bare, PlanOptions{WidthPX: 300, Label: "plan", Light: v}); !strings.Contains(under, "light-line") || strings.Contains(under, "<text") {
		t.Errorf("under the beds of a plan: %s", under)
	}
}

// The curve tells its most and its least, and marks the month.
func TestLightCurve(t *testing.T) {
	light := [12]float64{0.5, 0.6, 0.7, 0.8, 0.9, 0.9, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4}
	drawn := LightCurve(light, LightCurveOptions{WidthPX: 210, HeightPX: 96, Month: 3, Label: "light",
		Percent: func(share float64) string { return whole(int(math.Round(100*share))) + " %" }})
	for _, want := range []string{">90 %<", ">40 %<", `class="pen today"`} {
		if !strings.Contains(drawn, want) {
			t.Errorf("the curve has no %s", want)
		}
	}
}
