package draw

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/place"
)

func exampleSite() (place.Site, []SiteThing, SiteOptions) {
	ell := place.Bed{Shape: place.ByOutline, LengthM: 3, WidthM: 2, Outline: "0 0; 3 0; 3 1; 1 1; 1 2; 0 2", At: place.Spot{XM: 3, YM: 6, TurnDeg: 90}}
	pot := place.Bed{Shape: place.Round, LengthM: 0.5, WidthM: 0.5, At: place.Spot{XM: 9, YM: 7}}
	bed := place.Bed{LengthM: 4, WidthM: 1.2, At: place.Spot{XM: 7, YM: 3, TurnDeg: 30}}
	pear := place.Feature{Kind: place.DeciduousTree, LengthM: 3, WidthM: 3, At: place.Spot{XM: 10, YM: 5.5}}
	house := place.Feature{Kind: place.Building, LengthM: 5, WidthM: 3, At: place.Spot{XM: 6, YM: 9.6}}
	of := func(b place.Bed, name string) SiteThing {
		return SiteThing{Class: "bed", Label: name + " & more", Path: "?pick=" + name, Data: []string{"data-thing", "beds/" + name}, At: b.At,
			LengthM: b.LengthM, WidthM: b.WidthM, Corners: b.Corners(), Names: []string{name}, Size: []string{"its size"}}
	}
	things := []SiteThing{
		{Class: "building", Label: "house", Path: "?pick=house", At: house.At, LengthM: 5, WidthM: 3, Corners: house.Corners(), Names: []string{"House, 5 m", "House"}},
		of(ell, "L <b>"), of(pot, "Pot"), of(bed, "Slanted bed"),
		{Class: "deciduous", Label: "pear", Path: "?pick=pear", Trunk: true, At: pear.At, LengthM: 3, WidthM: 3, Corners: pear.Corners(), Names: []string{"Pear, 4 m"}},
	}
	things[3].Chosen = true
	return place.Site{Name: "Yard", PlanWidthM: 12, PlanDepthM: 8, UpDeg: 90}, things,
		SiteOptions{WidthPX: 600, HeightPX: 500, Zoom: 1, Label: "Yard <1>", Data: []string{"data-size", "# by #"}, North: "north",
			Metres: func(m float64) string { return whole(int(m)) + " m" }}
}

func TestSiteDrawingIsAsItWas(t *testing.T) {
	got := strings.ReplaceAll(SiteDrawing(exampleSite()), "><", ">\n<") + "\n"
	const name = "testdata/site.svg"
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the drawing differs from %s; go test ./internal/draw -update writes it anew:\n%s", name, got)
	}
}

// The drawing is whole XML without style or script, every thing is a link that
// says what it is, and north lies where the plan's bearing puts it.
func TestSiteDrawingIsWholeAndPlain(t *testing.T) {
	links := 0
	svg := SiteDrawing(exampleSite())
	for _, e := range elements(t, svg) {
		for _, a := range e.Attr {
			if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") {
				t.Errorf("<%s> has %s", e.Name.Local, a.Name.Local)
			}
		}
		if e.Name.Local == "a" {
			links++
			if attr(e, "href") == "" || attr(e, "aria-label") == "" {
				t.Errorf("a thing without address or words: %v", e.Attr)
			}
		}
	}
	if links != 5 {
		t.Errorf("%d things are links, want 5", links)
	}
	// Up is east, so north is a quarter turn anticlockwise from up.
	if !strings.Contains(svg, `class="arrow" transform="rotate(-90)"`) {
		t.Error("the arrow does not lie to the left")
	}
	if SiteDrawing(place.Site{}, nil, SiteOptions{WidthPX: 100, HeightPX: 100}) != "" {
		t.Error("a site without a size is drawn")
	}
}

// What is drawn is to scale: the box of a bed's path has its length and width.
func TestBedsAreToScale(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		site := place.Site{PlanWidthM: rapid.Float64Range(5, 200).Draw(rt, "width"), PlanDepthM: rapid.Float64Range(5, 200).Draw(rt, "depth")}
		b := place.Bed{LengthM: rapid.Float64Range(0.5, 5).Draw(rt, "length"), WidthM: rapid.Float64Range(0.5, 5).Draw(rt, "across")}
		b.At = place.Spot{XM: rapid.Float64Range(2.5, site.PlanWidthM-2.5).Draw(rt, "x"), YM: rapid.Float64Range(2.5, site.PlanDepthM-2.5).Draw(rt, "y")}
		o := SiteOptions{WidthPX: 900, HeightPX: 640, Zoom: rapid.SampledFrom([]float64{1, 2, 8}).Draw(rt, "zoom"), Label: "site"}
		svg := SiteDrawing(site, []SiteThing{{Class: "bed", Label: "bed", Path: "?", At: b.At, LengthM: b.LengthM, WidthM: b.WidthM, Corners: b.Corners()}}, o)
		d := regexp.MustCompile(`class="shape" d="M(-?[\d.]+) (-?[\d.]+)h(-?[\d.]+)v(-?[\d.]+)`).FindStringSubmatch(svg)
		if d == nil {
			rt.Fatalf("no bed in %s", svg)
		}
		scale := SiteScale(site, o)
		// The path begins at the lower left corner.
		for i, want := range []float64{siteEdge + (b.At.XM-b.LengthM/2)*scale, siteEdge + (site.PlanDepthM-b.At.YM+b.WidthM/2)*scale, b.LengthM * scale, -b.WidthM * scale} {
			if got, err := strconv.ParseFloat(d[i+1], 64); err != nil || math.Abs(got-want) > 0.15 {
				rt.Fatalf("%s: number %d is %v, want %v", d[0], i, got, want)
			}
		}
	})
}

// Every class that is drawn has a rule.
func TestSiteClassesAreInTheStylesheet(t *testing.T) {
	raw, err := os.ReadFile("../web/style/draw.css")
	if err != nil {
		t.Fatal(err)
	}
	css := string(raw) + stylesheet(t)
	for _, e := range elements(t, SiteDrawing(exampleSite())) {
		for _, c := range strings.Fields(attr(e, "class")) {
			if c != "thing-bed" && !regexp.MustCompile(`\.`+regexp.QuoteMeta(c)+`[^-\w]`).MatchString(css) {
				t.Errorf("the class %s has no rule", c)
			}
		}
	}
}
