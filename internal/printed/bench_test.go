package printed

import (
	"testing"

	"garner/internal/crop"
)

// BenchmarkCoarsePass computes every date of the published tables at the pace of
// the fits; the places with their weather are made before.
func BenchmarkCoarsePass(b *testing.B) {
	book, err := crop.Load()
	if err != nil {
		b.Fatal(err)
	}
	dates, err := Published()
	if err != nil {
		b.Fatal(err)
	}
	exam, err := NewExam(dates, CoarsePace)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		exam.Rows(book, 2, func(*Date) bool { return true })
		clear(exam.known)
	}
}
