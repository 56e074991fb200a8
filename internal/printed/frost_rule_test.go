package printed

import (
	"testing"

	"garner/internal/crop"
	"garner/internal/growth"
)

// The rule by hand: half-hardy crops two weeks before the last frost; the last sowing
// by the days to maturity and a fortnight before the first.
func TestFrostRuleByHand(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	_, carrot, err := book.Find("carrot")
	if err != nil {
		t.Fatal(err)
	}
	w := ruled(carrot, growth.FromSeed, &Region{LastFrost: 110, FirstFrost: 300})
	if want := 110 - 14; w.First != want {
		t.Errorf("first %d, want %d: carrots are half-hardy", w.First, want)
	}
	if want := 300 - int(carrot.DaysSeed) - 14; w.Last != want {
		t.Errorf("last %d, want %d", w.Last, want)
	}
}
