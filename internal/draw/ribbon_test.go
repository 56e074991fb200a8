package draw

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/desk"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The odds can be read back from a drawing: at every step and thread, what is
// drawn is what the figures say, and the threads drawn are as many as there are
// thresholds not above the odds.
func TestThreadsGiveTheOdds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weeks := rapid.IntRange(1, 6).Draw(t, "weeks")
		v := &desk.RibbonView{}
		for range weeks {
			v.WantKg = append(v.WantKg, rapid.SampledFrom([]float64{0, 0.5, 0.8, 1}).Draw(t, "want"))
		}
		v.WantKg[0] = 1
		level := rapid.Bool().Draw(t, "one share at every height")
		for range weeks * 4 {
			p, g := 0, 0
			for j := range desk.Threads {
				if j == 0 || !level {
					p = rapid.IntRange(0, 200).Draw(t, "futures with food")
					g = rapid.IntRange(0, p).Draw(t, "futures with food from the ground")
				}
				v.Food[j] = append(v.Food[j], float32(p)/200)
				v.Ground[j] = append(v.Ground[j], float32(g)/200)
			}
		}
		s := Weeks(exampleFrom, weeks)
		r := newRibbon(v, s, RibbonOptions{HeightPX: 40})
		drawn := paths(t, Ribbon(v, s, RibbonOptions{HeightPX: 40}))
		for i := range weeks * 4 {
			threads, solid := 0, 0
			for j := range desk.Threads {
				if r.want[i] == 0 {
					continue
				}
				x, y := float64(r.x[i]+r.x[i+1])/20, float64(r.row(i, j)+r.row(i, j+1))/20
				isGround, isStore := drawn["ground"].has(x, y), drawn["store"].has(x, y)
				if isGround && isStore {
					t.Fatalf("step %d thread %d is drawn twice", i, j)
				}
				if want := float64(v.Ground[j][i]) >= thresholds[j]-1e-6; isGround != want {
					t.Fatalf("step %d thread %d: solid %v, at odds %.3f", i, j, isGround, v.Ground[j][i])
				}
				if want := float64(v.Food[j][i]) >= thresholds[j]-1e-6; (isGround || isStore) != want {
					t.Fatalf("step %d thread %d: drawn %v, at odds %.3f", i, j, isGround || isStore, v.Food[j][i])
				}
				if isGround || isStore {
					threads++
				}
				if isGround {
					solid++
				}
			}
			if level && r.want[i] > 0 && (threads != atMost(v.Food[0][i]) || solid != atMost(v.Ground[0][i])) {
				t.Fatalf("step %d: %d threads, %d solid, at odds %.3f and %.3f", i, threads, solid, v.Food[0][i], v.Ground[0][i])
			}
		}
	})
}

// atMost counts the thresholds not above the odds.
func atMost(p float32) (n int) {
	for _, t := range thresholds {
		if t <= float64(p)+1e-6 {
			n++
		}
	}
	return n
}

// An outline holds the filled cells and no others.
func TestOutlineHoldsTheCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns, rows := rapid.IntRange(1, 9).Draw(t, "columns"), rapid.IntRange(1, 6).Draw(t, "rows")
		x := []int{0}
		heights := make([]int, columns)
		for i := range columns {
			x = append(x, x[i]+rapid.IntRange(1, 40).Draw(t, "width"))
			heights[i] = rapid.IntRange(2, 30).Draw(t, "height")
		}
		w := newWeave(x, rows, func(column, row int) int { return 500 - heights[column]*row })
		for c := range columns {
			for r := range rows {
				if rapid.Bool().Draw(t, "filled") {
					w.fill(c, r)
				}
			}
		}
		s := shape{}
		if d := w.outline(); d != "" {
			s = readPath(t, d)
		}
		for c := range columns {
			for r := range rows {
				mx, my := float64(x[c]+x[c+1])/20, float64(w.y(c, r)+w.y(c, r+1))/20
				if s.has(mx, my) != w.filled(c, r) {
					t.Fatalf("column %d row %d: filled %v, drawn %v by %s", c, r, w.filled(c, r), s.has(mx, my), w.outline())
				}
			}
		}
	})
}

func TestGoldenRibbon(t *testing.T) {
	o := RibbonOptions{HeightPX: 20, Label: "carrots, week by week", Today: exampleToday, Months: true,
		Words: RibbonWords{Ground: "ground", Store: "store", Short: "short", Spare: "to spare"}}
	got := Ribbon(exampleRibbon(), exampleScale(), o) + "\n"
	name := filepath.Join("testdata", "ribbon.svg")
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
		t.Errorf("the ribbon differs from %s; go test ./internal/draw -update writes it anew:\n%s", name, got)
	}
	if len(got) > 3000 {
		t.Errorf("a usual ribbon takes %d bytes, over 3000", len(got))
	}
}

// What is to spare passes through the three years it is known for, and more is
// never likelier than less.
func TestSparePassesThroughTheYears(t *testing.T) {
	v := &desk.RibbonView{}
	for q, share := range []float32{0.2, 0.5, 0.9} {
		v.Over[q] = []float32{share}
	}
	for _, c := range []struct{ share, p float64 }{{0.2, 0.9}, {0.5, 0.5}, {0.9, 0.1}, {1.3, 0}} {
		if got := exceeds(v, 0, c.share); got < c.p-1e-6 || got > c.p+1e-6 {
			t.Errorf("%.1f of the want to spare: %.3f of the years, want %.1f", c.share, got, c.p)
		}
	}
	last := 1.0
	for share := 0.01; share < 2; share += 0.01 {
		p := exceeds(v, 0, share)
		if p > last+1e-9 || p < 0 {
			t.Fatalf("at %.2f of the want the odds are %.3f after %.3f", share, p, last)
		}
		last = p
	}
	none := &desk.RibbonView{}
	for q := range none.Over {
		none.Over[q] = []float32{0}
	}
	if p := exceeds(none, 0, 0.05); p != 0 {
		t.Errorf("nothing to spare gives odds of %.2f", p)
	}
}

// A change tried is stitched where it fills what was open, and washed where what
// was filled no longer is.
func TestTriedDiffersFromBefore(t *testing.T) {
	now, before := exampleRibbon(), exampleRibbon()
	for j := range desk.Threads {
		for i := range now.Food[j] {
			if i >= 45 && i < 50 {
				now.Food[j][i], before.Food[j][i], now.Ground[j][i], before.Ground[j][i] = 1, 0, 1, 0
			}
			if i >= 160 && i < 164 {
				now.Food[j][i], before.Food[j][i], now.Ground[j][i], before.Ground[j][i] = 0, 1, 0, 0
			}
		}
	}
	s := exampleScale()
	r := newRibbon(now, s, RibbonOptions{HeightPX: 20})
	drawn := paths(t, Ribbon(now, s, RibbonOptions{HeightPX: 20, Before: before}))
	for _, c := range []struct {
		step  int
		class string
	}{{47, "draft"}, {162, "lost"}, {5, "store"}, {100, "ground"}} {
		x, y := float64(r.x[c.step]+r.x[c.step+1])/20, float64(r.base)/10-0.6
		for _, class := range []string{"ground", "store", "draft", "lost"} {
			if drawn[class].has(x, y) != (class == c.class) {
				t.Errorf("step %d: %s drawn %v", c.step, class, drawn[class].has(x, y))
			}
		}
	}
}

func BenchmarkRibbon(b *testing.B) {
	v, s := exampleRibbon(), exampleScale()
	for b.Loop() {
		Ribbon(v, s, RibbonOptions{HeightPX: 20, Months: true, Today: exampleToday})
	}
}

// What is bought fills the threads that food does not reach and buying does, in a
// texture of its own, and none of the open ones beyond it; where nothing may be bought
// the drawing is as without.
func TestWhatIsBoughtIsGridded(t *testing.T) {
	without, with := exampleRibbon(), exampleRibbon()
	gap := func(step int) bool { return step >= 44 && step < 52 }
	for j := range desk.Threads {
		with.Bought[j] = slices.Clone(with.Food[j])
		for i := range with.Bought[j] {
			if gap(i) && j < 6 {
				with.Bought[j][i] = 1
			}
		}
	}
	scale, o := exampleScale(), RibbonOptions{HeightPX: 20}
	r, before := newRibbon(with, scale, o), newRibbon(without, scale, o)
	n := 0
	for j := range r.kinds {
		for i, k := range r.kinds[j] {
			switch was := before.kinds[j][i]; {
			case k == bought:
				n++
				if was != none || !gap(i) || j >= 6 {
					t.Errorf("thread %d, step %d: bought, was %d", j, i, was)
				}
			case k != was:
				t.Errorf("thread %d, step %d: %d, was %d", j, i, k, was)
			case was == none && gap(i) && j < 6:
				t.Errorf("thread %d, step %d: open, and bought", j, i)
			}
		}
	}
	if n == 0 || !strings.Contains(Ribbon(with, scale, o), `class="bought"`) || strings.Contains(Ribbon(without, scale, o), `class="bought"`) {
		t.Errorf("%d cells are bought", n)
	}
	stacked := exampleVegetable()
	stacked.Ribbon = *with
	if svg := Stack(stacked, scale, StackOptions{HeightPX: 158, Bought: "bought"}); !strings.Contains(svg, `class="bought"`) {
		t.Error("the page of a vegetable does not draw what is bought")
	}
}
