package frost

import (
	"testing"

	"garner/internal/demotest"
	"garner/internal/outlook"
)

// BenchmarkFrost is a demo's frost page, with the weather at hand.
func BenchmarkFrost(b *testing.B) {
	h := demotest.Holding(b, "")
	s := demotest.Setting(b, h, 200)
	m := outlook.NewMemory()
	for b.Loop() {
		if _, err := Of(Question{Setting: s, Memory: m}); err != nil {
			b.Fatal(err)
		}
	}
}
