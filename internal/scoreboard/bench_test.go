package scoreboard

import (
	"testing"

	"garner/internal/crop"
)

// BenchmarkWholeBoard computes every section on two workers.
func BenchmarkWholeBoard(b *testing.B) {
	book, err := crop.Load()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := NewBoard(book, Asked{Workers: 2}); err != nil {
			b.Fatal(err)
		}
	}
}
