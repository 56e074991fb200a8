package scoreboard

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// trialOfRows are the plots of the sorghum and cowpea trial: rows of sorghum of
// five, and the weights of the two.
func trialOfRows(t *testing.T) (plots [][3]float64, sorghum, cowpea float64) {
	t.Helper()
	f, err := os.Open("testdata/sorghum_cowpea.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows[1:] {
		var v [3]float64
		for k, column := range []int{1, 3, 4} {
			if v[k], err = strconv.ParseFloat(r[column], 64); err != nil {
				t.Fatal(err)
			}
		}
		if r[0] == "NA" {
			sorghum, cowpea = max(sorghum, v[1]), max(cowpea, v[2])
			continue
		}
		plots = append(plots, v)
	}
	return plots, sorghum, cowpea
}

// The printed ranges of the mixtures are those of the plots.
func TestRangesOfMixturesAreThoseOfThePlots(t *testing.T) {
	plots, sorghum, cowpea := trialOfRows(t)
	want := map[float64]Span{}
	for _, p := range plots {
		ratio := exactly(p[1]/sorghum + p[2]/cowpea)
		if known, ok := want[p[0]]; ok {
			ratio = ratio.join(known)
		}
		want[p[0]] = ratio
	}
	found := 0
	for _, l := range sectionOf(t, "shared-ground").Lines {
		if l.Check.Key != "scoreboard.mixture" || l.Crop != "sweetcorn" {
			continue
		}
		found++
		rows := l.Check.Args["rows"].(float64)
		if w := want[rows]; math.Abs(w.Low-l.Published.Low) > 5e-4 || math.Abs(w.High-l.Published.High) > 5e-4 {
			t.Errorf("%g rows: printed %v, the plots have %v", rows, l.Published, w)
		}
	}
	if found != len(want) {
		t.Errorf("%d mixtures of %d", found, len(want))
	}
}

// Of the published trials of shared ground these are met, and the others are
// missed and say so; a change that moves one must say which.
func TestSharedGroundAsItStands(t *testing.T) {
	want := []struct {
		check   string
		verdict Verdict
	}{
		{"scoreboard.light_beneath", Missed}, {"scoreboard.light_beneath", Missed},
		{"scoreboard.mixture", Missed}, {"scoreboard.mixture", Met}, {"scoreboard.mixture", Missed}, {"scoreboard.mixture", Met},
		{"scoreboard.mixture", Missed}, // leeks and celery
		{"scoreboard.density", Missed}, {"scoreboard.density", Missed},
	}
	s := sectionOf(t, "shared-ground")
	if len(s.Lines) != len(want) {
		t.Fatalf("%d lines, want %d", len(s.Lines), len(want))
	}
	for i, l := range s.Lines {
		if l.Slack != 0 {
			t.Errorf("line %d: a slack of %g", i, l.Slack)
		}
		if l.Check.Key != want[i].check || l.Verdict != want[i].verdict {
			t.Errorf("line %d: %s is %s (%v, published %v), was %s", i, l.Check.Key, l.Verdict, l.Computed, l.Published, want[i].verdict)
		}
	}
}

// Between rows of celery it was the leeks that were the worse for it (Baumann,
// Kropff & Bastiaans 2000).
func TestLeeksAreTheWorseForCelery(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	m, err := newMaker(book, 1)
	if err != nil {
		t.Fatal(err)
	}
	gardens, err := m.trialGardens()
	if err != nil {
		t.Fatal(err)
	}
	on := cal.MonthDay{Month: 5, Day: 28}
	leek, celery := planted(m.find("leek", "early"), on), planted(m.find("celery", ""), on)
	first, second, err := gardens["Zurich"].inTurn(mixture{leek, celery, 1, 1})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("leek %.2f, celery %.2f", first, second)
	if first >= 0.5 || second <= first {
		t.Errorf("leek %.2f and celery %.2f of the pure stands", first, second)
	}
	// A crop in turn with rows of its own is but that crop.
	own, other, err := gardens["Zurich"].inTurn(mixture{celery, celery, 1, 1})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(own+other-1) > 1e-3 {
		t.Errorf("celery in turn with celery gives %.4f and %.4f", own, other)
	}
}
