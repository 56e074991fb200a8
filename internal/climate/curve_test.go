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

// The daily normals of Lebanon (NOAA 1981-2010), smoothed from 30 years by NOAA,
// against the curve through its twelve monthly means.
func TestSmoothAgainstDailyNormals(t *testing.T) {
	n := lebanonNormals(t)
	var low, high [12]float64
	for i := range n {
		low[i], high[i] = n[i].TMinC, n[i].TMaxC
	}
	lowCurve, highCurve := smooth(low), smooth(high)
	tab := readTable(t, "lebanon_us_daily.csv")
	worst, sum := 0.0, 0.0
	for row := range tab.Rows {
		c := cells{tab, row}
		d := must(t, func() (cal.MonthDay, error) { return cal.ParseMonthDay(c.text("month_day")) }).DayOfYear() - 1
		for _, off := range []float64{lowCurve[d] - c.number("tmin_c"), highCurve[d] - c.number("tmax_c")} {
			worst = math.Max(worst, math.Abs(off))
			sum += off * off
		}
	}
	rms := math.Sqrt(sum / float64(2*len(tab.Rows)))
	t.Logf("%.2f C off at most, %.2f root mean square", worst, rms)
	if worst > 0.8 || rms > 0.25 {
		t.Errorf("%.2f C off at most, %.2f root mean square", worst, rms)
	}
}
