package advise_test

import (
	"testing"

	"garner/internal/advise"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
)

// BenchmarkRank times the ranking of every wanted use of the book for one space
// of the demo over 100 futures, the table known.
func BenchmarkRank(b *testing.B) { rank(b, demo(b)) }

// BenchmarkRankWholeBook is the same for a household that wants every vegetable of
// the book.
func BenchmarkRankWholeBook(b *testing.B) { rank(b, wantingAll(b)) }

func rank(b *testing.B, h *holding.Holding) {
	m := outlook.NewMemory()
	for b.Loop() {
		b.StopTimer()
		a, err := advise.New(demotest.Setting(b, h, demoYears), m)
		if err != nil {
			b.Fatal(err)
		}
		s, err := a.Space(advise.Asked{Bed: "h9"})
		if err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		r, err := a.Rank(s)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(r.Tried), "uses")
		b.ReportMetric(float64(len(r.Candidates)), "candidates")
	}
}

// wantingAll is the demo of a household that wants something of every vegetable
// of the book.
func wantingAll(t testing.TB) *holding.Holding {
	t.Helper()
	h := demo(t)
	known := demotest.Book(t)
	wanted := map[string]bool{}
	for i := range h.Wants {
		wanted[h.Wants[i].Vegetable] = true
	}
	for _, c := range known.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() && !wanted[u.Vegetable] {
				wanted[u.Vegetable] = true
				h.Wants = append(h.Wants, larder.Want{Vegetable: u.Vegetable, KgPerWeek: 0.3})
			}
		}
	}
	return h
}
