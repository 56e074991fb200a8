package window_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/sun"
	"garner/internal/window"
)

const years = 10

// mild is a place with the same cool year over and over: January 3 C, July 18 C.
func mild(t *testing.T) *window.Place {
	t.Helper()
	first := cal.Of(2001, 1, 1)
	days := make([]climate.Day, years*366+window.RunOut)
	for i := range days {
		wave := -math.Cos(2 * math.Pi * (float64(i) - 20) / 365.25)
		mean := 10.7 + 7.5*wave
		days[i] = climate.Day{TMinC: mean - 4, TMaxC: mean + 4, RadiationMJ: 10 + 7.5*wave}
	}
	p, err := window.NewPlace(sun.Location{LatitudeDeg: 52, LongitudeDeg: 5, ElevationM: 2}, first, days, 1, cover.Open)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is planted in autumn is first picked in the season in which the plant
// bears, not some weeks after planting (common practice, no source: chives from
// March or April, redcurrants in July, keeping apples from late September).
func TestPerennialsAreReadyInTheirSeason(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	place := mild(t)
	for _, c := range []struct {
		crop, use string
		from, to  cal.MonthDay
	}{
		{"chives", "leaf", cal.MonthDay{Month: 3, Day: 1}, cal.MonthDay{Month: 4, Day: 25}},
		{"redcurrant", "red", cal.MonthDay{Month: 6, Day: 25}, cal.MonthDay{Month: 7, Day: 25}},
		{"apple", "keeping", cal.MonthDay{Month: 9, Day: 15}, cal.MonthDay{Month: 10, Day: 20}},
	} {
		k, _ := book.Crop(c.crop)
		u, err := k.Use(c.use)
		if err != nil {
			t.Fatal(err)
		}
		a := window.Find(window.Question{Use: u, Start: growth.FromCrown, Place: place, Years: years, Chance: 0.8})
		autumn := false
		for _, w := range a.Windows {
			if w.First < 213 {
				continue
			}
			autumn = true
			if w.ReadyFrom < c.from.DayOfYear() || w.ReadyTo > c.to.DayOfYear() {
				t.Errorf("%s of autumn: ready from day %d to %d, want within %d and %d", c.crop, w.ReadyFrom, w.ReadyTo, c.from.DayOfYear(), c.to.DayOfYear())
			}
		}
		if !autumn {
			t.Errorf("%s cannot be planted in autumn: %v", c.crop, a.Windows)
		}
	}
}

// A use that stands the winter has no window in spring, when another use of the
// crop is sown: its window holds the day on which it is usually put in (common
// practice, no source: onion sets to stand the winter from the middle of
// September to the middle of November, broad beans in October and November).
func TestUsesForTheWinterHaveNoSpringWindow(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	place := mild(t)
	for _, c := range []struct {
		crop, use string
		start     growth.Start
		usual     cal.MonthDay
	}{
		{"onion", "overwintered", growth.FromSet, cal.MonthDay{Month: 9, Day: 25}},
		{"broad-bean", "autumn", growth.FromSeed, cal.MonthDay{Month: 10, Day: 25}},
	} {
		k, _ := book.Crop(c.crop)
		u, err := k.Use(c.use)
		if err != nil {
			t.Fatal(err)
		}
		a := window.Find(window.Question{Use: u, Start: c.start, Place: place, Years: years, Chance: 0.8})
		if spring := a.ByDay[cal.MonthDay{Month: 5, Day: 1}.DayOfYear()-1]; spring > 0 {
			t.Errorf("%s %s started in May is usable in %.2f of years", c.crop, c.use, spring)
		}
		holds := false
		for _, w := range a.Windows {
			holds = holds || w.First <= c.usual.DayOfYear() && c.usual.DayOfYear() <= w.Last
		}
		if !holds {
			t.Errorf("%s %s: no window holds %v: %+v", c.crop, c.use, c.usual, a.Windows)
		}
	}
}
