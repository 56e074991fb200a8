package desk

import (
	"math"
	"testing"
)

// By hand: 200 that could be 180 can be a tenth better; a bound that says nothing says nothing.
func TestHowMuchBetterAYearCouldBe(t *testing.T) {
	for _, c := range []struct{ objective, bound, share float64 }{
		{200, 180, 0.1}, {200, 200.0000001, 0}, {200, -50, 1}, {0, 0, 0}, {200, math.Inf(-1), math.NaN()}, {math.NaN(), 3, math.NaN()},
	} {
		if got := betterShare(c.objective, c.bound); math.Abs(got-c.share) > 1e-12 || math.IsNaN(got) != math.IsNaN(c.share) {
			t.Errorf("%g and not below %g: %g, want %g", c.objective, c.bound, got, c.share)
		}
	}
	for bound, key := range map[float64]string{math.Inf(-1): "desk.draft_better_unknown", 0.5: "desk.draft_better_unknown", -3: "desk.draft_better_unknown",
		199.9: "desk.draft_best", 150: "desk.draft_better"} {
		if p := Better(200, bound); p.Key != key {
			t.Errorf("not below %g: %s, want %s", bound, p.Key, key)
		}
	}
}
