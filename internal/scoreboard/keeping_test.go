package scoreboard

import (
	"math"
	"testing"

	"garner/internal/crop"
)

// What is read off the larder is what its row says: a Q10 of 3 is three times as long 10 C
// colder, below the floor it keeps less long, and dormant bulbs hardly feel warmth.
func TestKeepingIsReadOffTheLarder(t *testing.T) {
	leaf := crop.Storage{BestC: 0, FloorC: -1, LifeDays: 90, Q10: 3}
	for _, c := range []struct {
		measure        string
		row            crop.Storage
		at, than, want float64
	}{
		{"respiration", leaf, 10, 0, 3},
		{"life", leaf, 10, 0, 1.0 / 3},
		{"days", leaf, 10, 10, 30},
		{"respiration", crop.Storage{BestC: 10, FloorC: 0, LifeDays: 240, Q10: 1}, 20, 10, 1},
	} {
		if got := kept(c.measure, c.row, c.at, c.than); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s at %g C: %g, want %g", c.measure, c.at, got, c.want)
		}
	}
	if cucumber := (crop.Storage{BestC: 10, FloorC: 8, LifeDays: 7, Q10: 2}); kept("life", cucumber, 4, 10) >= 1 {
		t.Error("a cucumber keeps as long when too cold")
	}
}

// Every line of the section has an answer of the larder: its crop keeps that way. At least
// 15 crops have their respiration at two temperatures, and two thirds of what was read is met.
func TestKeepingIsAnswered(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	b, err := NewBoard(book, Asked{Section: "keeping", Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	s, breathe := &b.Sections[0], map[string]bool{}
	for _, l := range s.Lines {
		if !l.Computed.Known() {
			t.Errorf("%s: %s has no answer", l.Crop, l.Check.Key)
		}
		if l.Check.Key == "scoreboard.keeping_respiration" {
			breathe[l.Crop] = true
		}
	}
	if len(breathe) < 15 {
		t.Errorf("%d crops with respiration", len(breathe))
	}
	if s.share() < 65 {
		t.Errorf("%.0f %% of the read rows are met", s.share())
	}
}
