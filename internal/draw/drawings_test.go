package draw

import (
	"bytes"
	"compress/gzip"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
)

// all draws one of each kind, with words that need to be escaped.
func all() map[string]string {
	s, v := exampleScale(), exampleVegetable()
	before := exampleVegetable()
	before.Sources = before.Sources[:2]
	tried := exampleVegetable()
	tried.Before = before
	tried.Gaps = nil
	months := exampleTexts().Months
	say := func(d desk.SourceView, _ bool) string { return d.Letter + " " + d.Name }
	figure := func(v float64) string { return px(v) }
	p := examplePlanting()
	lane := LaneOptions{HeightPX: 34, Label: "a <b> & c", Ring: "date", Date: "29 March", Today: exampleToday, Months: true}
	indoors := lane
	indoors.Out, indoors.Tried, indoors.Under = p.Date+30, true, true
	return map[string]string{
		"defs":   Defs(),
		"ribbon": Ribbon(exampleRibbon(), s, RibbonOptions{HeightPX: 20, Label: "a <b> & \"c\"", Today: exampleToday, Months: true}),
		"plain":  Ribbon(exampleRibbon(), s, RibbonOptions{HeightPX: 20, Label: "plain", Plain: true}),
		"tried":  Ribbon(exampleRibbon(), s, RibbonOptions{HeightPX: 20, Label: "tried", Before: nothing()}),
		"small":  Ribbon(exampleRibbon(), s, RibbonOptions{HeightPX: 12, Label: "small", Small: true}),
		"axis":   Axis(s, exampleToday, exampleDaylight(), exampleTexts()),
		"months": Axis(s, exampleToday, nil, exampleTexts()),
		"phone":  AxisPhone(Scale{From: exampleFrom, Days: 7 * exampleWeeks, WidthPX: PhoneWeekPX * exampleWeeks}, exampleToday, exampleDaylight(), exampleTexts()),
		"share":  Share(exampleRibbon(), s, ShareOptions{HeightPX: 44, Label: "share", Today: exampleToday, Thinnest: exampleFrom + 80, ThinText: "47 %"}),
		"stack":  Stack(v, s, StackOptions{HeightPX: 158, Label: "stack", Source: say, Figure: figure, Want: "want <1", Short: "short"}),
		"stack tried": Stack(tried, s, StackOptions{HeightPX: 158, Label: "stack", Plain: true,
			Mended: func(weeks int) string { return whole(weeks) + " weeks mended" }}),
		"pair": Pair(examplePair(), PairScale(examplePair(), 900), PairOptions{HeightPX: 70, Label: "a <b> & c", Months: months, Today: exampleToday,
			TodayIs: "today", Upper: "above <1", Lower: "below", Light: "light", All: "100 %", None: "0 %"}),
		"site":  SiteDrawing(exampleSite()),
		"year":  Year(exampleStart(), exampleYear(), yearOptions()),
		"worth": Worth(2, 4, WorthOptions{WidthPX: 300, HeightPX: 30, Label: "worth", Figure: "2.0 kg"}),
		"keep":  Keep(choice(), KeepScale(choice(), 360), KeepOptions{HeightPX: 90, Label: "keep", Gives: "it gives", Follows: "follows", Best: "best"}),
		"ages":  Ages([]float64{0, .3, .8, 1, 1, 1}, AgesOptions{WidthPX: 360, HeightPX: 60, Label: "ages", Share: figure, Season: whole}),
		"lane":  Lane(&p.PlantingLine, s, lane),
		"plan":  Plan(exampleGround(), examplePlan()),
		"butt": ButtCurve(&desk.ButtView{Sizes: []desk.ButtPoint{{HoldsL: 50, Share: .2, ShareDry: .1}, {HoldsL: 100, Share: .4, ShareDry: .2}, {HoldsL: 200, Share: .7, ShareDry: .5}}, Own: &desk.ButtPoint{HoldsL: 150, Share: .5}},
			ButtCurveOptions{WidthPX: 358, HeightPX: 220, Label: "a <b> & c", Litres: figure, Percent: figure, Middle: "middle", Dry: "dry <1", Own: "150 L"}),
		"butt of none": ButtCurve(&desk.ButtView{}, ButtCurveOptions{WidthPX: 358, HeightPX: 220, Label: "none", Litres: figure, Percent: figure}),
		"water": WaterMonths([]WaterMonth{{Name: "Jun", GivenL: 20}, {Name: "Jul", GivenL: 5, MeanL: 40, DryL: 70, HasToCome: true, Year: "2027", MeanText: "70 <L"}},
			WaterMonthsOptions{WidthPX: 358, HeightPX: 200, Label: "a <b> & c"}),
		"bed lane":     BedLane(exampleBed(), s, exampleBedLane()),
		"date axis":    DateAxis(s, exampleDateLine()),
		"date line":    DateLine(s, exampleDateLine()),
		"lane indoors": Lane(&p.PlantingLine, s, indoors),
		"course": Course(p, CourseScale(p, 900), CourseOptions{HeightPX: 80, Label: "course", Months: months, Today: exampleToday + 5, TodayIs: "today",
			Stage: func(s string) string { return s }, Weight: "kg", Leaf: "leaf", Light: "MJ", Warmth: "°C", Figure: figure}),
	}
}

// nothing is a ribbon that nothing fills.
func nothing() *desk.RibbonView {
	v := exampleRibbon()
	for j := range desk.Threads {
		clear(v.Ground[j])
		clear(v.Food[j])
	}
	return v
}

// Every drawing is whole XML, says in text what it shows, and holds neither
// style attributes nor script, so that a strict policy lets it stand.
func TestDrawingsAreWholeAndPlain(t *testing.T) {
	for name, svg := range all() {
		roots := 0
		for i, e := range elements(t, svg) {
			if e.Name.Local == "svg" && attr(e, "class") != "plan-inside" {
				roots++
			}
			if e.Name.Local == "script" || e.Name.Local == "style" || e.Name.Local == "foreignObject" {
				t.Errorf("%s holds a %s", name, e.Name.Local)
			}
			for _, a := range e.Attr {
				if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") {
					t.Errorf("%s: %s has the attribute %s", name, e.Name.Local, a.Name.Local)
				}
			}
			if i == 0 && name != "defs" && name != "date line" && (attr(e, "aria-label") == "" || attr(e, "role") == "") {
				t.Errorf("%s does not say what it shows", name)
			}
		}
		if roots != 1 {
			t.Errorf("%s has %d drawings", name, roots)
		}
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Errorf("%s holds what is not a number", name)
		}
	}
}

// Views that are empty, or of a vegetable nobody wants, are drawn as nothing.
func TestNothingIsDrawnOfNothing(t *testing.T) {
	s := exampleScale()
	for name, svg := range map[string]string{
		"ribbon":   Ribbon(&desk.RibbonView{}, s, RibbonOptions{HeightPX: 20, Label: "none", Today: cal.None}),
		"stack":    Stack(&desk.VegetableView{Today: cal.None}, s, StackOptions{HeightPX: 100, Label: "none"}),
		"share":    Share(&desk.RibbonView{}, s, ShareOptions{HeightPX: 44, Label: "none", Today: cal.None, Thinnest: cal.None}),
		"lane":     Lane(&desk.PlantingLine{Date: cal.None}, s, LaneOptions{HeightPX: 34, Label: "none", Today: cal.None, Out: cal.None}),
		"plan":     Plan(&desk.GroundYearView{}, PlanOptions{WidthPX: 300, Label: "none"}),
		"bed lane": BedLane(&desk.BedYear{}, s, BedLaneOptions{HeightPX: 40, Label: "none"}),
		"course":   Course(&desk.PlantingView{}, CourseScale(&desk.PlantingView{}, 900), CourseOptions{HeightPX: 80, Label: "none", Today: cal.None}),
		"year":     Year(&desk.StartView{}, exampleYear(), YearOptions{HeightPX: 40, Label: "none", Today: cal.None, Ready: true}),
		"ages":     Ages(nil, AgesOptions{WidthPX: 300, HeightPX: 60, Label: "none"}),
		"axis":     Axis(Scale{From: exampleFrom}, cal.None, nil, AxisTexts{Label: "none"}),
	} {
		elements(t, svg)
		if strings.Contains(svg, "NaN") || strings.Contains(svg, `class="ground"`) {
			t.Errorf("%s of nothing: %s", name, svg)
		}
	}
}

// A whole table of 35 rows stays under 150 kB on the way.
func TestTableIsLight(t *testing.T) {
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	for i := range 35 {
		v := exampleRibbon()
		for j := range desk.Threads { // no two rows alike
			v.Food[j], v.Ground[j] = slices.Concat(v.Food[j][i:], v.Food[j][:i]), slices.Concat(v.Ground[j][i:], v.Ground[j][:i])
		}
		_, _ = z.Write([]byte(Ribbon(v, exampleScale(), RibbonOptions{HeightPX: 20, Months: true, Today: exampleToday})))
	}
	_ = z.Close()
	if packed.Len() > 150_000 {
		t.Errorf("35 ribbons take %d bytes packed", packed.Len())
	}
}

// The bands of a stack stand for the sources' shares: where the first planting
// gives three quarters of the week, three quarters of the threads are its own.
func TestStackSharesOut(t *testing.T) {
	k := newStack(exampleVegetable(), exampleScale(), StackOptions{HeightPX: 168})
	k.lay()
	filled := map[string]float64{}
	for _, b := range k.bands {
		for i := 15 * 4; i < 18*4; i++ {
			if !b.stored {
				filled[b.source.Letter] += b.fills(i)
			}
		}
	}
	if share := filled["B"] / (filled["B"] + filled["C"]); math.Abs(share-0.75) > 0.08 {
		t.Errorf("the first planting holds %.2f of the threads, gives 0.75", share)
	}
}

// heightAt and reach undo one another between the lowest and the highest thread.
func TestHeightAndReach(t *testing.T) {
	v := exampleRibbon()
	for i := range v.Food[0] {
		for _, p := range []float64{0.1, 0.5, 0.9} {
			h := heightAt(&v.Ground, i, p)
			if h <= 0.05 || h >= 0.95 {
				continue
			}
			if got := reach(&v.Ground, i, h); math.Abs(got-p) > 1e-5 {
				t.Fatalf("step %d: %.2f of the want in %.3f of the years, want %.1f", i, h, got, p)
			}
		}
	}
}

// A date that cannot be moved has no ring, and a ring can be reached by keys and
// says its date.
func TestRing(t *testing.T) {
	p := exampleLine()
	o := LaneOptions{HeightPX: 34, Label: "lane", Ring: "when it is sown", Date: "29 March"}
	var ring map[string]string
	for _, e := range elements(t, Lane(p, exampleScale(), o)) {
		if attr(e, "class") == "ring" {
			ring = map[string]string{}
			for _, a := range e.Attr {
				ring[a.Name.Local] = a.Value
			}
		}
	}
	want := map[string]string{"tabindex": "0", "role": "slider", "aria-label": "when it is sown", "aria-valuetext": "29 March",
		"data-planting": "first", "data-date": p.Date.String(), "data-from": exampleFrom.String()}
	for name, value := range want {
		if ring[name] != value {
			t.Errorf("the ring's %s is %q, want %q", name, ring[name], value)
		}
	}
	p.Movable = false
	if strings.Contains(Lane(p, exampleScale(), o), "ring") {
		t.Error("a date in the past has a ring")
	}
}

func TestMendedWeeks(t *testing.T) {
	d := exampleFrom
	before := []desk.GapView{{First: d, Last: d + 7*8 - 1, Weeks: 8}}
	now := []desk.GapView{{First: d + 14, Last: d + 7*4 - 1, Weeks: 2}}
	got := mended(before, now)
	if len(got) != 2 || got[0].Weeks != 2 || got[1].Weeks != 4 || got[1].First != d+28 || got[1].Last != d+55 {
		t.Errorf("mended %+v", got)
	}
}

// Words go to the first ribbon that has room, once each; a word that finds none
// is left out.
func TestWordsAreSetOnce(t *testing.T) {
	views := []*desk.RibbonView{nil, nothing(), exampleRibbon(), exampleRibbon()}
	out := ShareOut(views, exampleScale(), RibbonWords{Ground: "all of it out of the ground", Store: "store", Short: "short"}, 20)
	if out[0] != (RibbonWords{}) || out[1] != (RibbonWords{Short: "short"}) || out[2] != (RibbonWords{Store: "store"}) || out[3] != (RibbonWords{}) {
		t.Errorf("words went to %+v", out)
	}
}

func stylesheet(t *testing.T) string {
	t.Helper()
	names, err := filepath.Glob("../web/style/*.css")
	if err != nil || len(names) == 0 {
		t.Fatal("no styles", err)
	}
	var css strings.Builder
	for _, name := range names {
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		css.Write(raw)
	}
	return css.String()
}

// Every class that is drawn has a rule, and every texture a rule names is there.
func TestClassesAreInTheStylesheet(t *testing.T) {
	css := stylesheet(t)
	bare := map[string]bool{"axis-svg": true, "stack": true, "lane": true, "course": true, "handle": true, "stem": true, "f13": true}
	classes := map[string]bool{}
	ids := map[string]bool{}
	for _, svg := range all() {
		for _, e := range elements(t, svg) {
			for _, c := range strings.Fields(attr(e, "class")) {
				classes[c] = true
			}
			if e.Name.Local == "pattern" {
				ids[attr(e, "id")] = true
			}
		}
	}
	for _, c := range slices.Sorted(maps.Keys(classes)) {
		if !bare[c] && !regexp.MustCompile(`\.`+regexp.QuoteMeta(c)+`[^-\w]`).MatchString(css) {
			t.Errorf("the class %s has no rule", c)
		}
	}
	for _, m := range regexp.MustCompile(`url\(#([\w-]+)\)`).FindAllStringSubmatch(css, -1) {
		if !ids[m[1]] {
			t.Errorf("the texture %s is not drawn", m[1])
		}
	}
}

// Words have a contrast of 7:1 with what they stand on, and shapes 3:1, in light
// and dark. Formula: W3C, Web Content Accessibility Guidelines 2.1 (2018),
// definitions of relative luminance and contrast ratio; success criteria 1.4.6
// and 1.4.11.
func TestContrast(t *testing.T) {
	css := stylesheet(t)
	if got := contrast("#777777", "#ffffff"); math.Abs(got-4.48) > 0.01 {
		t.Fatalf("#777 on white is %.2f:1; the published example is 4.48", got)
	}
	light := tokens(css[strings.Index(css, ":root {"):strings.Index(css, "@media (prefers-color-scheme: dark)")])
	dark := tokens(css[strings.Index(css, ":root[data-theme=dark]"):strings.Index(css, ":root[data-theme=light]")])
	for name, theme := range map[string]map[string]string{"light": light, "dark": dark} {
		for _, c := range []struct {
			on, under string
			least     float64
		}{{"ink", "paper", 7}, {"ink", "sheet", 7}, {"ink2", "paper", 7}, {"ink2", "t2", 7}, {"pen", "paper", 7}, {"pen", "sheet", 7}, {"pen", "pen-wash", 7},
			{"paper", "pen", 7}, {"paper", "soot", 7}, {"paper", "ink", 7}, {"ink", "lit0", 7}, {"ink", "lit4", 7}, {"ink", "t1", 7},
			{"soot", "sheet", 3}, {"soot2", "sheet", 3}, {"soot", "t1", 3}} {
			if got := contrast(theme[c.on], theme[c.under]); got < c.least {
				t.Errorf("%s: %s on %s is %.1f:1, under %.0f", name, c.on, c.under, got, c.least)
			}
		}
	}
}

func tokens(css string) map[string]string {
	out := map[string]string{}
	for _, m := range regexp.MustCompile(`--([\w-]+): (#[0-9a-f]{6})`).FindAllStringSubmatch(css, -1) {
		if _, known := out[m[1]]; !known {
			out[m[1]] = m[2]
		}
	}
	return out
}

func contrast(a, b string) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(hex string) float64 {
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		if len(hex) != 7 {
			return math.NaN()
		}
		n, _ := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		c := float64(n) / 255
		if c <= 0.03928 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}
