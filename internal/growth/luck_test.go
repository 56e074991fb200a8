package growth

import (
	"math"
	"testing"

	"garner/internal/num"
)

// The draws have the mean and spread that the book asks for.
func TestDrawsHaveTheirSpread(t *testing.T) {
	u := bookUse(t, "carrot", "table")
	shared, own := num.NewStream(1), num.NewStream(2)
	const n = 40000
	var yield, days, loss []float64
	for range n {
		d := Drawn(u, shared, own)
		yield, days, loss = append(yield, d.Yield), append(days, d.DaysLater), append(loss, d.Loss)
	}
	near := func(what string, got, want, off float64) {
		if math.Abs(got-want) > off {
			t.Errorf("%s %.3f, want %.3f", what, got, want)
		}
	}
	near("mean weight factor", num.Mean(yield), 1, 0.01)
	near("variation of weight", num.StandardDeviation(yield), u.WeightSpread, 0.02)
	near("mean delay", num.Mean(days), 0, 0.2)
	near("spread of dates", num.StandardDeviation(days), u.DateSpread, 0.5)
	near("mean stand loss", num.Mean(loss), u.StandLoss, 0.01)
	for _, l := range loss {
		if l < 0 || l > 1 {
			t.Fatalf("stand loss %g", l)
		}
	}
}
