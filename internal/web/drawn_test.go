package web

import (
	"html"
	"math"
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// computed is the demo's table as the engine gives it, past all pages.
func computed(t *testing.T) *desk.OutlookResult {
	t.Helper()
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	r, err := desk.Outlook(h, desk.OutlookOptions{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// shownRow is a row read off the page.
type shownRow struct {
	name, title, sentence string
	ground, food          [][]bool // by step and thread
}

var (
	rowPattern   = regexp.MustCompile(`(?s)<section class="row [a-z]+" data-vegetable="([^"]*)">(.*?)</section>`)
	titlePattern = regexp.MustCompile(`<h2><a[^>]*>([^<]*)</a></h2>`)
	sayPattern   = regexp.MustCompile(`(?s)<p>(.*?)</p>`)
	boxPattern   = regexp.MustCompile(`viewBox="0 0 ([\d.]+) ([\d.]+)"`)
	tagPattern   = regexp.MustCompile(`<[^>]*>`)
)

// readRows reads every row's words and threads off the table's page.
func readRows(t *testing.T, page string, r *desk.OutlookResult) []shownRow {
	t.Helper()
	want := map[string][]float64{}
	for i := range r.Vegetables {
		want[r.Vegetables[i].Name] = r.Vegetables[i].WantKg
	}
	var rows []shownRow
	for _, m := range rowPattern.FindAllStringSubmatch(page, -1) {
		row := shownRow{name: html.UnescapeString(m[1])}
		row.title = html.UnescapeString(titlePattern.FindStringSubmatch(m[2])[1])
		row.sentence = html.UnescapeString(tagPattern.ReplaceAllString(sayPattern.FindStringSubmatch(m[2])[1], ""))
		box := boxPattern.FindStringSubmatch(m[2])
		width, height := readNumber(t, box[1]), readNumber(t, box[2])
		base := height - 1 // a row of one line has a pixel of air
		greatest := base / 1.6
		ground, store := readArea(m[2], "ground"), readArea(m[2], "store")
		kg := want[row.name]
		steps := 4 * len(kg)
		for s := range steps {
			g, f := make([]bool, 10), make([]bool, 10)
			for j := range 10 {
				x := (float64(s) + 0.5) * width / float64(steps)
				y := base - greatest*kg[s/4]/fullWant(kg)*(float64(j)+0.5)/10
				g[j] = kg[s/4] > 0 && ground.holds(x, y)
				f[j] = g[j] || kg[s/4] > 0 && store.holds(x, y)
			}
			row.ground, row.food = append(row.ground, g), append(row.food, f)
		}
		rows = append(rows, row)
	}
	return rows
}

func readNumber(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// The drawn table is the computed one: the threads counted on the page are, week
// by week, the share of the want that the engine puts on the table. A single week
// may be off by what ten thresholds can tell; over the year they agree.
func TestDrawnThreadsAreTheComputedTable(t *testing.T) {
	s, _ := demo()
	_, page := get(t, s, "/?order=own")
	r := computed(t)
	rows := readRows(t, page, r)
	at := map[string]*desk.VegetableTable{}
	for i := range r.Vegetables {
		at[r.Vegetables[i].Name] = &r.Vegetables[i]
	}
	checked := 0
	for _, row := range rows {
		w := at[row.name]
		off, weeks := 0.0, 0
		for k := range w.WantKg {
			if w.WantKg[k] <= 0 || w.WantKg[k] < fullWant(w.WantKg)/8 || !steady(w.WantKg, k) {
				continue // threads thinner than the tenths of a pixel that a path is written in
			}
			ground, food := share(row.ground, k), share(row.food, k)
			if d := math.Abs(food - (w.FreshKg[k]+w.StoredKg[k])/w.WantKg[k]); d > 0.3 {
				t.Errorf("%s, week of %s: %.2f of the threads are drawn, the engine has %.2f", row.name, r.Weeks[k], food, (w.FreshKg[k]+w.StoredKg[k])/w.WantKg[k])
			} else {
				off += d
			}
			if d := math.Abs(ground - w.FreshKg[k]/w.WantKg[k]); d > 0.3 {
				t.Errorf("%s, week of %s: %.2f of the threads are solid, the engine has %.2f", row.name, r.Weeks[k], ground, w.FreshKg[k]/w.WantKg[k])
			}
			weeks++
		}
		if weeks > 0 && off/float64(weeks) > 0.06 {
			t.Errorf("%s: threads and engine differ by %.3f of the want on the mean", row.name, off/float64(weeks))
		}
		checked += weeks
	}
	if checked < 1000 {
		t.Errorf("only %d weeks were read off the page", checked)
	}
}

// steady tells whether a week's want is that of its neighbours: a week wanted in
// part has fewer steps.
func steady(want []float64, k int) bool {
	return k > 0 && k+1 < len(want) && want[k] == want[k-1] && want[k] == want[k+1]
}

func share(steps [][]bool, week int) float64 {
	n := 0
	for s := 4 * week; s < 4*week+4; s++ {
		for _, on := range steps[s] {
			if on {
				n++
			}
		}
	}
	return float64(n) / 40
}

// The sentences are the computed ones: each row tells the engine's next gap, by
// its length and its first week, and says no gap where the engine has none.
func TestRowSentencesAreTheComputedGaps(t *testing.T) {
	s, _ := demo()
	_, page := get(t, s, "/")
	r := computed(t)
	for _, row := range readRows(t, page, r) {
		for i := range r.Vegetables {
			if v := &r.Vegetables[i]; v.Name == row.name {
				if want := gapSentence(v, r); !strings.Contains(row.sentence, want) {
					t.Errorf("%s says %q, the engine has %q", row.name, row.sentence, want)
				}
			}
		}
	}
}

// gapSentence tells the first run of weeks that are short in half the futures or
// more.
func gapSentence(v *desk.VegetableTable, r *desk.OutlookResult) string {
	short := func(k int) bool { return v.WantKg[k] > 0 && v.GapChance[k] >= 0.5 }
	for k := range v.WantKg {
		if !short(k) {
			continue
		}
		n := 0
		for k+n < len(v.WantKg) && short(k+n) {
			n++
		}
		span := words.English().Text(words.P("words.span", words.Args{"n": n}))
		switch {
		case k == 0 && n == 1:
			return "Short this week"
		case k == 0:
			return "Short " + span + " from now"
		}
		return "Short " + span + " from " + words.English().Text(words.Sharp(r.Weeks[k], r.Weeks[0]))
	}
	return "No gap"
}

// Rows come the worst gap first, or as the household has them.
func TestRowsComeInTheOrderAskedFor(t *testing.T) {
	s, office := demo()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	r := computed(t)
	_, page := get(t, s, "/?order=own")
	place := map[string]int{}
	for i, w := range h.Wants {
		if _, known := place[w.Vegetable]; !known {
			place[w.Vegetable] = i
		}
	}
	last := -1
	for _, row := range readRows(t, page, r) {
		if place[row.name] < last {
			t.Errorf("%s stands after what is wanted later", row.name)
		}
		last = place[row.name]
	}
	_, page = get(t, s, "/")
	held := false
	for _, row := range readRows(t, page, r) {
		gap := strings.HasPrefix(row.sentence, "Short")
		if gap && held {
			t.Errorf("%s has a gap and stands under rows without one", row.name)
		}
		held = held || !gap
	}
}

// The figures under the table are the engine's.
func TestMonthsInFiguresAreTheComputedTable(t *testing.T) {
	_, office := demo()
	view, err := office.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	r := computed(t)
	twin := monthsOf(view)
	months, of := monthsAlong(view.From, view.Weeks)
	for _, row := range twin.Rows {
		for i := range r.Vegetables {
			v := &r.Vegetables[i]
			if vegetablePath(v.Name) != row.Path {
				continue
			}
			for m := range months {
				got, want := 0.0, 0.0
				for k := range v.WantKg {
					if of[k] == m {
						got, want = got+v.FreshKg[k]+v.StoredKg[k], want+v.WantKg[k]
					}
				}
				if want > 0 && math.Abs(row.Shares[m]-got/want) > 0.005 {
					t.Errorf("%s, %s: %.2f in figures, the engine has %.2f", v.Name, months[m], row.Shares[m], got/want)
				}
			}
		}
	}
}

// A vegetable's figures by source add up to what the engine puts on the table.
func TestSourcesAddUpToTheComputedTable(t *testing.T) {
	s, office := demo()
	r := computed(t)
	for _, name := range []string{"onion", "carrot", "lettuce"} {
		view, err := office.VegetableView(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		got := eatenKg(view)
		want := 0.0
		for i := range r.Vegetables {
			if v := &r.Vegetables[i]; v.Name == name {
				for k := range v.FreshKg {
					want += v.FreshKg[k] + v.StoredKg[k]
				}
			}
		}
		if math.Abs(got-want) > 0.01*want {
			t.Errorf("%s: the sources give %.2f kg, the engine %.2f kg", name, got, want)
		}
		code, page := get(t, s, vegetablePath(name))
		if code != http.StatusOK {
			t.Fatal(code)
		}
		for _, l := range view.Plantings {
			if !strings.Contains(page, `data-part="lane-`+l.ID+`"`) {
				t.Errorf("%s: %s has no lane", name, l.ID)
			}
		}
		for i := range view.Gaps[:min(len(view.Gaps), mostGapsSaid)] {
			told := gapWords
			if i > 0 {
				told = laterGapWords
			}
			said := plainText(capital(words.English().Text(told(&view.Gaps[i], view.Today))))
			if text := tagPattern.ReplaceAllString(page, ""); !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), said) {
				t.Errorf("%s: the page does not say %q", name, said)
			}
		}
	}
}

// area is a drawn area: figures of corners.
type area [][][2]float64

// readArea reads the path of a class out of a drawing.
func readArea(svg, class string) area {
	var out area
	pattern := regexp.MustCompile(`<path class="` + class + `" d="([^"]*)"`)
	for _, m := range pattern.FindAllStringSubmatch(svg, -1) {
		out = append(out, corners(m[1])...)
	}
	return out
}

var stroke = regexp.MustCompile(`([MhvlHVLz])([^MhvlHVLz]*)`)
var figure = regexp.MustCompile(`-?(?:\d+\.?\d*|\.\d+)`)

func corners(d string) area {
	var out area
	var x, y float64
	for _, m := range stroke.FindAllStringSubmatch(d, -1) {
		var n []float64
		for _, f := range figure.FindAllString(m[2], -1) {
			v, _ := strconv.ParseFloat(f, 64)
			n = append(n, v)
		}
		switch m[1] {
		case "M":
			x, y = n[0], n[1]
			out = append(out, nil)
		case "h":
			x += n[0]
		case "v":
			y += n[0]
		case "l":
			x, y = x+n[0], y+n[1]
		case "z":
			continue
		}
		out[len(out)-1] = append(out[len(out)-1], [2]float64{x, y})
	}
	return out
}

// holds tells whether a point lies in the area, by the number of edges to its
// right.
func (a area) holds(x, y float64) bool {
	inside := false
	for _, f := range a {
		for i := range f {
			p, q := f[i], f[(i+1)%len(f)]
			if (p[1] > y) != (q[1] > y) && x < (q[0]-p[0])*(y-p[1])/(q[1]-p[1])+p[0] {
				inside = !inside
			}
		}
	}
	return inside
}

// firstMonday keeps the tests' idea of a week that of the table.
func TestTableBeginsOnAMonday(t *testing.T) {
	if r := computed(t); r.Weeks[0].Weekday() != 0 || r.Weeks[0] != cal.Of(2027, 1, 4) {
		t.Errorf("the table begins on %s", r.Weeks[0])
	}
}
