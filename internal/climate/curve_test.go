package climate

import (
	"math"
	"testing"

	"garner/internal/cal"
)

func TestSmoothGivesMonthlyMeansBack(t *testing.T) {
	for _, months := range [][12]float64{
		{0.5, 0.3, 2.2, 4.2, 7.8, 10.6, 12.9, 12.3, 10, 7, 3.7, 1.5},
		{0, 0, 0, 80, 0, 0, 0, 0, 0, -40, 0, 0},
	} {
		curve := smooth(months)
		for m := range 12 {
			sum := 0.0
			for d, v := range curve {
				if monthOf[d] == m {
					sum += v
				}
			}
			if got := sum / float64(cal.DaysInMonth(m+1)); math.Abs(got-months[m]) > 1e-9 {
				t.Errorf("month %d: %v, want %v", m+1, got, months[m])
			}
		}
	}
}
