package advise_test

import (
	"testing"

	"garner/internal/advise"
	"garner/internal/outlook"
)

// BenchmarkRank times the ranking of every wanted use of the book for one space
// of the demo over 100 futures, the table known.
func BenchmarkRank(b *testing.B) {
	h := demo(b)
	m := outlook.NewMemory()
	for b.Loop() {
		b.StopTimer()
		a, err := advise.New(setting(b, h, demoYears), m)
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
