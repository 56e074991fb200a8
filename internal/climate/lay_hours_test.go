package climate

import (
	"math"
	"testing"
)

// Of the same hour the first list that knows a value gives it; no hour is lost and
// they rise.
func TestLayHours(t *testing.T) {
	nan := math.NaN()
	hour := func(h int, c, pct float64) Hour {
		return Hour{Hour: h, TempC: c, HumidityPct: pct, RainMM: nan, WindMS: nan}
	}
	best := []Hour{hour(1, 5, nan), hour(3, 7, 80)}
	other := []Hour{hour(0, 1, 50), hour(1, 9, 60), hour(2, 9, 70), hour(4, 9, 90)}
	got := LayHours(nil, best, nil, other)
	want := []Hour{hour(0, 1, 50), hour(1, 5, 60), hour(2, 9, 70), hour(3, 7, 80), hour(4, 9, 90)}
	if len(got) != len(want) {
		t.Fatalf("%d hours", len(got))
	}
	for i := range want {
		if got[i].Hour != want[i].Hour || got[i].TempC != want[i].TempC || got[i].HumidityPct != want[i].HumidityPct {
			t.Errorf("%+v, want %+v", got[i], want[i])
		}
	}
	if !math.IsNaN(best[0].HumidityPct) {
		t.Error("what was laid was written on")
	}
}
