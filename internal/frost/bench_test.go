package frost

import (
	"testing"

	"garner/internal/demotest"
	"garner/internal/outlook"
)

// BenchmarkSee looks at a demo's beds, with the weather at hand.
func BenchmarkSee(b *testing.B) {
	h := demotest.Holding(b, "")
	s := demotest.Setting(b, h, 200)
	m := outlook.NewMemory()
	for b.Loop() {
		if _, err := See(s, m); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAnswer answers for another minimum.
func BenchmarkAnswer(b *testing.B) {
	seen, err := See(demotest.Setting(b, demotest.Holding(b, ""), 200), outlook.NewMemory())
	if err != nil {
		b.Fatal(err)
	}
	low := -4.0
	for b.Loop() {
		if _, err := seen.Answer(Question{Minimum: &low}); err != nil {
			b.Fatal(err)
		}
	}
}
