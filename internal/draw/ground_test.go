package draw

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/place"
)

// exampleBed is 6 m long and 1.2 m wide: leeks on its left half, free beside them
// until spinach on a quarter in April, and clover under the leeks.
func exampleBed() *desk.BedYear {
	n := exampleWeeks * 4
	held := func(id string, at, share float64, from, clear cal.Date, leaf float32) desk.HeldGround {
		h := desk.HeldGround{PlantingLine: desk.PlantingLine{ID: id, Name: id + " & <more>", Bed: "b1", Date: from, AreaM2: share * 7.2,
			Leaf: make([]float32, n), Picked: make([]float32, n), Movable: from > exampleToday},
			Short: id, Share: share, Pieces: []desk.BedPiece{{At: at, Share: share}}, From: from, Clear: desk.Odds{P10: clear - 8, P50: clear, P90: clear + 8}}
		for i := range n {
			if day := exampleFrom + cal.Date(float64(i)*desk.Step); day >= from && day < clear {
				h.Leaf[i], h.Picked[i] = leaf, 1
			}
		}
		return h
	}
	b := &desk.BedYear{Bed: place.Bed{ID: "b1", Name: "Bed 1", LengthM: 6, WidthM: 1.2, At: place.Spot{XM: 5, YM: 8, TurnDeg: 200}}}
	b.Held = []desk.HeldGround{held("leeks", 0, 0.5, exampleFrom-100, exampleToday+60, 0.8), held("spinach", 0.5, 0.25, exampleToday+30, exampleToday+90, 0.4)}
	clover := held("clover", 0, 0.5, exampleToday-10, exampleToday+50, 0.5)
	clover.Relation, clover.To = "under", "leeks"
	b.Held = append(b.Held, clover)
	b.Free = []desk.FreeStretch{{BedPiece: desk.BedPiece{At: 0.5, Share: 0.5}, From: exampleFrom, Until: exampleToday + 30}}
	b.Wrong = []desk.WrongGround{{Planting: "spinach", With: []string{"leeks"}, From: exampleToday + 30, Until: exampleToday + 60}}
	b.Covers = []desk.CoverTime{{Kind: "fleece", On: exampleToday, Off: exampleToday + 40}}
	return b
}

func exampleGround() *desk.GroundYearView {
	pot := &desk.BedYear{Bed: place.Bed{ID: "pot", Name: "Pot", LengthM: 1, WidthM: 1, Shape: place.Round, At: place.Spot{XM: 2, YM: 2}}}
	corner := &desk.BedYear{Bed: place.Bed{ID: "l", Name: "Corner", LengthM: 3, WidthM: 2, Shape: place.ByOutline, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2", At: place.Spot{XM: 9, YM: 3}}}
	return &desk.GroundYearView{Site: place.Site{ID: "s", PlanWidthM: 12, PlanDepthM: 10, UpDeg: 20}, Drawn: true, From: exampleFrom, Today: exampleToday,
		Weeks: exampleWeeks, Beds: []*desk.BedYear{exampleBed(), pot, corner}, Features: []place.Feature{
			{ID: "w", Name: "Wall", Kind: place.Wall, At: place.Spot{XM: 6, YM: 0.2}, LengthM: 10, WidthM: 0.3, HeightM: 2},
			{ID: "t", Name: "Pear", Kind: place.DeciduousTree, At: place.Spot{XM: 10, YM: 7}, LengthM: 3, WidthM: 3},
			{ID: "p", Name: "Path", Kind: place.Path, At: place.Spot{XM: 6, YM: 5}, LengthM: 8, WidthM: 0.6},
			{ID: "h", Name: "House", Kind: place.Building, At: place.Spot{XM: 6, YM: 12}, LengthM: 6, WidthM: 3}}}
}

func examplePlan() PlanOptions {
	return PlanOptions{WidthPX: 600, Label: "plan <of> \"it\"", Day: exampleToday, Selected: "b1", Free: "free", North: "N",
		Bed:      func(b *desk.BedYear) (string, string) { return b.Name, "/ground?bed=" + b.ID },
		BedNames: func(b *desk.BedYear) []string { return []string{b.Name} },
		Names:    func(h *desk.HeldGround) []string { return []string{h.Name, h.Short} },
		Until:    func(h *desk.HeldGround) []string { return []string{"to " + h.Clear.P50.String()} },
		Feature:  func(f *place.Feature) []string { return []string{f.Name} },
		InLeaf:   func(*place.Feature) bool { return false },
		Metres:   func(m float64) string { return px(m) + " m" }}
}

func exampleBedLane() BedLaneOptions {
	return BedLaneOptions{HeightPX: 40, Label: "bed & its year", StepM2: 0.7, Tab: true, Tried: map[string]bool{"spinach": true},
		Names: func(h *desk.HeldGround) []string { return []string{h.Name, h.Short} },
		Title: func(h *desk.HeldGround) string { return h.Name },
		Free:  func(desk.FreeStretch) []string { return []string{"free 9 weeks", "free"} },
		Cover: func(c *desk.CoverTime) string { return c.Kind },
		Ring:  func(h *desk.HeldGround) (string, string) { return "date of " + h.Name, h.Date.String() }}
}

func exampleDateLine() DateLineOptions {
	t := exampleTexts()
	return DateLineOptions{Label: "months", Months: t.Months, Year: t.Year, Slider: "day of the plan", At: exampleToday + 40, AtText: "18 April", AtName: "18 Apr",
		Today: exampleToday, Month: func(first cal.Date) (string, string) {
			return "plan on " + first.String(), "/ground?at=" + first.String()
		}}
}

// Leeks on half of a bed, at four fifths of full leaf, rise to four fifths of half
// the bed's height; spinach stands on the upper half, and what grows under them
// hangs below the line.
func TestLanesAreAsThickAsTheirGround(t *testing.T) {
	l := &bedLane{bed: exampleBed(), options: &BedLaneOptions{HeightPX: 40}, scale: exampleScale(), base: 60}
	for i, c := range []struct{ ground, thick float64 }{{60, 20}, {40, 10}, {60 + underAir, 20}} {
		h := &l.bed.Held[i]
		if got := l.ground(h); math.Abs(got-c.ground) > 1e-9 {
			t.Errorf("%s stands at %v, want %v", h.ID, got, c.ground)
		}
		if got := l.thickness(h); math.Abs(got-c.thick) > 1e-9 {
			t.Errorf("%s is %v thick, want %v", h.ID, got, c.thick)
		}
	}
	svg := BedLane(exampleBed(), exampleScale(), exampleBedLane())
	for _, part := range []string{`class="leaf tried"`, `class="leaf under"`, `class="over"`, `class="draft"`, `class="pen"`, "thin dashed", "free 9 weeks", ">fleece<"} {
		if !strings.Contains(svg, part) {
			t.Errorf("the lane has no %s", part)
		}
	}
	if n := strings.Count(svg, `class="ring"`); n != 1 {
		t.Errorf("%d rings, one planting can be moved", n)
	}
}

// A bed is drawn to scale: 6 m of a plan of 12 m on 600 px are 300 px, half of it
// leeks, and the solid along their foot is four fifths of their half.
func TestPlanIsToScale(t *testing.T) {
	v, o := exampleGround(), examplePlan()
	p := &sitePlan{view: v, options: &o, toScale: toScale{perM: 50, foot: 500}, w: 600, h: 500}
	b := p.planBed(v.Beds[0])
	if got := (b.along(b.parts[0].At+b.parts[0].Share) - b.along(b.parts[0].At)) * p.perM; math.Abs(got-150) > 1e-9 {
		t.Errorf("leeks are %v px long", got)
	}
	if got := b.leafOf(b.parts[0].Held); math.Abs(got-0.8) > 1e-6 {
		t.Errorf("leeks cover %v of their ground", got)
	}
	if b.turn != 20 {
		t.Errorf("a bed turned by 200 degrees is drawn at %v", b.turn)
	}
	svg := Plan(v, o)
	for _, part := range []string{"rotate(-20)", "rotate(-20)", "plan-crown bare", "plan-building", "plan-wall", "plan-path", `href="/ground?bed=pot"`, ">free<", "2 m"} {
		if !strings.Contains(svg, part) {
			t.Errorf("the plan has no %s", part)
		}
	}
}

// The pieces a shape is cut into make up its ground, wherever it is cut.
func TestCutShapesAddUp(t *testing.T) {
	shapes := [][]place.Point{
		place.Bed{LengthM: 6, WidthM: 1.2}.Corners(),
		place.Bed{LengthM: 2, WidthM: 1, Shape: place.Round}.Corners(),
		place.Bed{LengthM: 3, WidthM: 2, Shape: place.ByOutline, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2"}.Corners(),
	}
	rapid.Check(t, func(t *rapid.T) {
		corners := rapid.SampledFrom(shapes).Draw(t, "shape")
		at := rapid.Float64Range(-3, 3).Draw(t, "at")
		left, right := clipped(corners, -10, at, -10, 10), clipped(corners, at, 10, -10, 10)
		if got, want := place.Area(left)+place.Area(right), place.Area(corners); math.Abs(got-want) > 1e-9 {
			t.Fatalf("cut at %v: %v m2, want %v", at, got, want)
		}
	})
}

// A share of a shape's ground reaches as far along it as that much of its area.
func TestSharesFollowTheShape(t *testing.T) {
	v, o := exampleGround(), examplePlan()
	p := &sitePlan{view: v, options: &o, toScale: toScale{perM: 50, foot: 500}, w: 600, h: 500}
	for _, b := range v.Beds {
		own := p.planBed(b)
		for share := 0.1; share < 1; share += 0.2 {
			got := place.Area(clipped(own.corners, own.left, own.along(share), own.low, own.high)) / b.AreaM2()
			if math.Abs(got-share) > 0.01 {
				t.Errorf("%s: %.2f of the ground is drawn as %.2f", b.ID, share, got)
			}
		}
	}
}

// Words never meet on a lane.
func TestLabelsKeepApart(t *testing.T) {
	var p plates
	rapid.Check(t, func(t *rapid.T) {
		p = p[:0]
		n := rapid.IntRange(2, 30).Draw(t, "n")
		for range n {
			x, y := rapid.Float64Range(0, 200).Draw(t, "x"), rapid.Float64Range(0, 50).Draw(t, "y")
			p.take(taken{x, y, x + rapid.Float64Range(1, 60).Draw(t, "w"), y + 14})
		}
		for i, a := range p {
			for _, b := range p[:i] {
				if a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom {
					t.Fatalf("%v meets %v", a, b)
				}
			}
		}
	})
}
