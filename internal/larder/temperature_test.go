package larder

import (
	"math"
	"testing"

	"garner/internal/cal"
)

func monthMean(s *Store, year, month int, northern bool) float64 {
	sum, n := 0.0, 0
	for day := cal.Of(year, month, 1); day < cal.Of(year, month+1, 1); day++ {
		sum += s.TemperatureC(day, northern)
		n++
	}
	return sum / float64(n)
}

// The coldest and the warmest month come back as told, in either half of the
// world.
func TestStoreMonthsComeBack(t *testing.T) {
	s := &Store{Method: "cool shed", WinterC: 3, SummerC: 17}
	for _, c := range []struct {
		month    int
		northern bool
		want     float64
	}{{1, true, 3}, {7, true, 17}, {7, false, 3}, {1, false, 17}} {
		if got := monthMean(s, 2027, c.month, c.northern); math.Abs(got-c.want) > 0.02 {
			t.Errorf("month %d, northern %v: %.3f C, want %g", c.month, c.northern, got, c.want)
		}
	}
}

// A southern store is a northern one half a year on.
func TestSouthernStoreIsShiftedHalfAYear(t *testing.T) {
	s := &Store{Method: "cool shed", WinterC: -1, SummerC: 20}
	january, july := cal.Of(2027, 1, 1), cal.Of(2027, 7, 1)
	for d := cal.Date(0); d < 180; d++ {
		north, south := s.TemperatureC(january+d, true), s.TemperatureC(july+d, false)
		if math.Abs(north-south) > 1e-9 {
			t.Fatalf("day %d: %g and %g", d, north, south)
		}
	}
}

// The course does not jump at the new year.
func TestStoreCourseIsSmooth(t *testing.T) {
	s := &Store{Method: "hung", WinterC: 2, SummerC: 22}
	for _, northern := range []bool{true, false} {
		for d := cal.Of(2026, 1, 1); d < cal.Of(2031, 1, 1); d++ {
			if step := math.Abs(s.TemperatureC(d+1, northern) - s.TemperatureC(d, northern)); step > 0.2 {
				t.Fatalf("%v: step of %.2f C", d, step)
			}
		}
	}
}

func TestFreezerStandsStill(t *testing.T) {
	s := &Store{Method: Frozen, WinterC: 3, SummerC: 20}
	if got := s.TemperatureC(cal.Of(2027, 8, 1), true); got != -18 {
		t.Errorf("%g C", got)
	}
}
