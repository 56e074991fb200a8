package browser_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"strings"
	"testing"

	"garner/internal/words"
)

// threads is the number of threads of a ribbon, and steps of its steps in a week.
const (
	threads = 10
	steps   = 4
)

// computedTable is what garner outlook --json tells.
type computedTable struct {
	Weeks      []string
	Vegetables []computedRow
}

type computedRow struct {
	Name      string
	WantKg    []float64 `json:"want_kg"`
	FreshKg   []float64 `json:"fresh_kg"`
	StoredKg  []float64 `json:"stored_kg"`
	GapChance []float64 `json:"gap_chance"`
}

// drawnRow is a row as the browser drew it: the share of the threads that are
// solid, and that are solid or hatched, by week.
type drawnRow struct {
	Name, Said, Kg string
	Gap            bool
	Solid, Filled  []float64
}

// readDrawn asks the browser at the middle of every thread and step whether the
// point lies in what was filled. The ground of a ribbon lies one pixel over its
// lower edge, and six tenths of its height are kept for what is to spare.
const readDrawn = `(want => [...document.querySelectorAll(".rows .row")].map(row => {
	const name = row.dataset.vegetable, svg = row.querySelector("svg.ribbon"), box = svg.viewBox.baseVal;
	const paths = kind => [...svg.querySelectorAll("path." + kind)];
	const kinds = {ground: paths("ground"), store: paths("store")};
	const base = box.height - 1, height = base / 1.6, kg = want[name], most = Math.max(...kg);
	const at = (kind, x, y) => kinds[kind].some(p => p.isPointInFill(new DOMPoint(x, y)));
	const out = {Name: name, Gap: row.classList.contains("gap"), Said: row.querySelector(".lab p").textContent,
		Kg: row.querySelector(".n").textContent, Solid: [], Filled: []};
	kg.forEach((w, k) => {
		let solid = 0, filled = 0;
		for (let s = 0; w > 0 && s < %[2]d; s++) for (let j = 0; j < %[1]d; j++) {
			const x = (k + (s + 0.5) / %[2]d) * box.width / kg.length, y = base - height * w / most * (j + 0.5) / %[1]d;
			if (at("ground", x, y)) { solid++; filled++ } else if (at("store", x, y)) filled++;
		}
		out.Solid.push(solid / %[1]d / %[2]d); out.Filled.push(filled / %[1]d / %[2]d);
	});
	return out;
}))(%[3]s)`

// The table on the screen is the computed one: the threads that the browser
// filled are, week by week, the share of the want that garner outlook puts on
// the table for the same household, and each row tells its next gap.
func TestDrawnTableIsTheComputedOne(t *testing.T) {
	beside(t)
	table := askOutlook(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit("/")
	want := map[string][]float64{}
	for _, v := range table.Vegetables {
		want[v.Name] = v.WantKg
	}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	rows := eval[[]drawnRow](b, fmt.Sprintf(readDrawn, threads, steps, text))
	drawn := map[string]*drawnRow{}
	for i := range rows {
		drawn[rows[i].Name] = &rows[i]
	}
	weeks := 0
	for _, v := range table.Vegetables {
		if row := drawn[v.Name]; row != nil {
			weeks += compareRow(t, row, &v)
		} else if highest(v.WantKg) > 0 {
			t.Errorf("%s is wanted and has no row", v.Name)
		}
	}
	if weeks < 1000 {
		t.Errorf("only %d weeks were read off the screen", weeks)
	}
}

// askOutlook runs garner at the prompt on the same household.
func askOutlook(t *testing.T) *computedTable {
	t.Helper()
	out, err := exec.Command(program, "outlook", "--sample=main", "--json").Output()
	if err != nil {
		t.Fatal(err)
	}
	table := &computedTable{}
	if err := json.Unmarshal(out, table); err != nil {
		t.Fatal(err)
	}
	return table
}

// How far a week may be off, as a share of the want, by what ten thresholds can
// tell; and a row on the mean of its weeks.
const (
	weekOff = 0.3
	rowOff  = 0.06
)

// compareRow returns the number of weeks compared. Weeks wanted in part, and
// those wanted so little that a thread is thinner than a path is written, are
// left out.
func compareRow(t *testing.T, row *drawnRow, v *computedRow) int {
	t.Helper()
	most, off, weeks := highest(v.WantKg), 0.0, 0
	for k, kg := range v.WantKg {
		if k == 0 || k+1 == len(v.WantKg) || kg < most/8 || kg != v.WantKg[k-1] || kg != v.WantKg[k+1] {
			continue
		}
		solid := math.Abs(row.Solid[k] - v.FreshKg[k]/kg)
		filled := math.Abs(row.Filled[k] - (v.FreshKg[k]+v.StoredKg[k])/kg)
		if max(solid, filled) > weekOff {
			t.Errorf("%s, week %d: %.2f solid and %.2f filled on the screen, %.2f and %.2f computed", v.Name, k,
				row.Solid[k], row.Filled[k], v.FreshKg[k]/kg, (v.FreshKg[k]+v.StoredKg[k])/kg)
		}
		off, weeks = off+filled, weeks+1
	}
	if weeks > 0 && off/float64(weeks) > rowOff {
		t.Errorf("%s: the screen is off by %.3f of the want on the mean", v.Name, off/float64(weeks))
	}
	kg := fmt.Sprintf("%.1f", most)
	if most < 0.15 {
		kg = fmt.Sprintf("%.0f", 1000*most) // grams
	}
	if !strings.HasPrefix(strings.TrimSpace(row.Kg), kg) {
		t.Errorf("%s: %s kg a week are wanted, the screen says %s", v.Name, kg, row.Kg)
	}
	if said := gapSaid(v); !strings.HasPrefix(row.Said, said) || row.Gap != (said != "No gap") {
		t.Errorf("%s: the screen says %q, computed is %q", v.Name, row.Said, said)
	}
	return weeks
}

// On a desk each sentence of the demo's table stands whole in its line.
func TestNoSentenceIsCut(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit("/")
	cut := eval[string](b, `[...document.querySelectorAll(".row .lab > *")].filter(e => {
		const text = document.createRange();
		text.selectNodeContents(e);
		return text.getBoundingClientRect().right > e.getBoundingClientRect().right + 0.5;
	}).map(e => e.innerText).join("\n")`)
	if cut != "" {
		t.Errorf("cut off:\n%s", cut)
	}
	b.quiet()
}

// gapSaid begins the sentence about the first run of weeks that are short in
// half the years or more.
func gapSaid(v *computedRow) string {
	n := 0
	for k, kg := range v.WantKg {
		if kg > 0 && v.GapChance[k] >= 0.5 {
			n++
		} else if n > 0 {
			break
		}
	}
	switch n {
	case 0:
		return "No gap"
	case 1:
		return "Short"
	}
	return "Short " + words.English().Text(words.P("words.span", words.Args{"n": n}))
}

func highest(kg []float64) float64 {
	most := 0.0
	for _, w := range kg {
		most = max(most, w)
	}
	return most
}
