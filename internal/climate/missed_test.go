package climate

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/cal"
	"garner/internal/num"
)

// The futures miss a forecast on either side alike, as far as data/forecast_misses.csv
// says of each day ahead, and the same seed misses it in the same way.
func TestFuturesMissAForecastMoreTheFurtherAhead(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: forecastOf(10, 8)})
	const futures = 4000
	before := 0.0
	for lead := range 10 {
		var low, high []float64
		for future := range futures {
			d := f.Days(3, future, 0, today+cal.Date(lead), 1, nil)[0]
			low, high = append(low, d.TMinC), append(high, d.TMaxC)
			if d.TMinC > d.TMaxC {
				t.Fatalf("%g to %g C", d.TMinC, d.TMaxC)
			}
		}
		want := missAt(lead)
		if m, s := num.Mean(low), num.StandardDeviation(low); math.Abs(m-5) > 0.15 || math.Abs(s-want.tMinC) > 0.1 || s <= before {
			t.Errorf("%d days ahead the minima are %.2f C and %.2f apart, want 5 and %.2f", lead, m, s, want.tMinC)
		}
		before = num.StandardDeviation(low)
		if m, s := num.Mean(high), num.StandardDeviation(high); math.Abs(m-11) > 0.4 || math.Abs(s-want.tMaxC) > 0.25 {
			t.Errorf("%d days ahead the maxima are %.2f C and %.2f apart, want 11 and %.2f", lead, m, s, want.tMaxC)
		}
	}
	if diff := cmp.Diff(f.Days(3, 7, 0, today, 30, nil), f.Days(3, 7, 0, today, 30, nil)); diff != "" {
		t.Error(diff)
	}
}

// The odds of a frost by a forecast of 3 C are sharp for the coming night and soft a week
// ahead: by the spreads 2 % and 16 %.
func TestFrostOddsSoftenWithTheLead(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: forecastOf(10, 6)})
	frosts := [10]int{}
	for future := range 2000 {
		for i, d := range f.Days(3, future, 0, today, 10, nil) {
			if d.TMinC <= 0 {
				frosts[i]++
			}
		}
	}
	if tomorrow, week := float64(frosts[1])/2000, float64(frosts[7])/2000; tomorrow > 0.05 || week < 0.12 || week > 0.22 {
		t.Errorf("a frost tomorrow in %.2f of the futures, in a week in %.2f", tomorrow, week)
	}
}

// Rain that is forecast falls on the next day in most futures, and a week ahead in
// fewer; the rest have that of their own weather.
func TestForecastRainSoftens(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: forecastOf(10, 6)})
	var kept [10]float64
	for future := range 400 {
		for i, d := range f.Days(3, future, 0, today, 10, nil) {
			if d.RainMM == 1 {
				kept[i] += 1. / 400
			}
		}
	}
	if kept[1] < 0.8 || kept[7] > 0.4 || kept[7] < 0.2 {
		t.Errorf("the rain of the forecast falls in %.2f of the futures", kept)
	}
}

// A forecast made some days ago misses as one so many days further ahead.
func TestAnOldForecastMissesMore(t *testing.T) {
	spread := func(ageD int) float64 {
		f := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: forecastOf(3, 6), ForecastAgeD: ageD})
		var low []float64
		for future := range 1000 {
			low = append(low, f.Days(3, future, 0, today+1, 1, nil)[0].TMinC)
		}
		return num.StandardDeviation(low)
	}
	if fresh, old := spread(0), spread(4); math.Abs(fresh-missAt(1).tMinC) > 0.15 || math.Abs(old-missAt(5).tMinC) > 0.2 {
		t.Errorf("fresh %.2f C apart, four days old %.2f", fresh, old)
	}
}

// Without a forecast nothing is missed: what a future draws is what it drew before there
// were misses, to the last bit, and days seen are those of the record in every future.
func TestNothingIsMissedWithoutAForecast(t *testing.T) {
	f := deBiltFutures(t, Source{Record: deBilt.record(t)})
	if got := f.foretold(key{seed: 1}); got != nil {
		t.Errorf("%d days are foretold", len(got))
	}
	past := deBiltFutures(t, Source{Record: deBilt.record(t), Forecast: &Record{Days: []Observation{{Date: today - 1, TMinC: Is(1), TMaxC: Is(2)}}}})
	if got := past.foretold(key{seed: 1}); got != nil {
		t.Errorf("%d days are foretold by a forecast that is past", len(got))
	}
	if !slices.IsSortedFunc(misses(), func(a, b miss) int { return int(a.leadD - b.leadD) }) {
		t.Error("the misses are out of order")
	}
}
