package search

import (
	"testing"

	"garner/internal/programme"
)

// Pricing one move: one unit more of a sowing, the vegetable's 78 weeks under four
// futures.
func BenchmarkPriceOfOneMove(b *testing.B) {
	p := invented(0, size{8, 8, 25, 78, 4})
	c := newChain(p.NewStanding(), Asked{}, 0)
	c.greedy()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		c.s.Price(programme.Change{Sowing: i % len(p.Sowings), Units: 1})
	}
}

// A search of eighty beds, ten thousand moves.
func BenchmarkSearchOfEightyBeds(b *testing.B) {
	p := invented(0, size{20, 16, 30, 78, 4})
	b.ReportAllocs()
	for b.Loop() {
		Run(p.NewStanding(), Asked{Seed: 1, Steps: 10_000})
	}
}
