package draft_test

import (
	"testing"

	"garner/internal/demotest"
	"garner/internal/draft"
)

// BenchmarkBuild times the making of the problem of eighty beds, profiles included.
func BenchmarkBuild(b *testing.B) {
	known := demotest.Book(b)
	all, err := draft.Benchmark(known, 1)
	if err != nil {
		b.Fatal(err)
	}
	c := all[len(all)-2]
	c.Setting.Workers = 2
	for b.Loop() {
		d, err := draft.Build(c.Setting)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(d.Problem.Sowings)), "sowings")
	}
}
