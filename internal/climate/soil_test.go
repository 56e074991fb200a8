package climate

import (
	"math"
	"testing"

	"garner/internal/cal"
)

// soilErrors runs the ground of Valentia over the odd years, which the constants
// were not fitted on, and gathers by month how far it is from the thermometer
// at 10 cm.
func soilErrors(t *testing.T) (bias, square [12]float64) {
	seen := map[cal.Date]float64{}
	tab := readTable(t, "valentia_ie_soil.csv.gz")
	for row := range tab.Rows {
		c := cells{tab, row}
		if v := c.maybe("soil10_c"); v.Known {
			seen[must(t, func() (cal.Date, error) { return cal.Parse(c.text("date")) })] = v.Value
		}
	}
	series := must(t, func() (Series, error) { return Complete(valentia.record(t), valentia.location) })
	soil := NewSoil(10, 10)
	var n [12]float64
	for i, d := range series.Days {
		date := series.First + cal.Date(i)
		got := soil.Step(d.MeanC(), d.RadiationMJ)
		want, ok := seen[date]
		if year, month, _ := date.YMD(); ok && year%2 == 1 {
			bias[month-1] += got - want
			square[month-1] += (got - want) * (got - want)
			n[month-1]++
		}
	}
	for m := range n {
		bias[m] /= n[m]
		square[m] = math.Sqrt(square[m] / n[m])
	}
	return bias, square
}

func TestSoilAgainstTheThermometer(t *testing.T) {
	bias, square := soilErrors(t)
	for m := range bias {
		t.Logf("month %d: %+.2f C off in the mean, %.2f by day", m+1, bias[m], square[m])
		if math.Abs(bias[m]) > 0.5 || square[m] > 1.2 {
			t.Errorf("month %d: %+.2f C off in the mean, %.2f by day", m+1, bias[m], square[m])
		}
	}
}

// The ground at Valentia swings 1.37 times as wide over the year as the air and
// is 9.8 days early (yearly harmonics of the daily series: air 4.19 C, day 213.8;
// soil at 10 cm 5.75 C, day 204.0).
func TestSoilFollowsTheSun(t *testing.T) {
	series := must(t, func() (Series, error) { return Complete(valentia.record(t), valentia.location) })
	soil := NewSoil(10, 10)
	var air, ground [2]float64
	for i, d := range series.Days {
		sin, cos := math.Sincos(2 * math.Pi * float64((series.First + cal.Date(i)).DayOfYear()) / 365.2425)
		s := soil.Step(d.MeanC(), d.RadiationMJ)
		air[0], air[1] = air[0]+d.MeanC()*cos, air[1]+d.MeanC()*sin
		ground[0], ground[1] = ground[0]+s*cos, ground[1]+s*sin
	}
	swing := math.Hypot(ground[0], ground[1]) / math.Hypot(air[0], air[1])
	early := (math.Atan2(air[1], air[0]) - math.Atan2(ground[1], ground[0])) / (2 * math.Pi) * 365.2425
	t.Logf("swing %.2f, %.1f days early", swing, early)
	if swing < 1.25 || swing > 1.45 || early < 7 || early > 12 {
		t.Errorf("swing %.2f of the air's, %.1f days early", swing, early)
	}
}

// Bounds of sense (common practice, no source): hard frost hardly enters the
// ground of a snowy climate, and bare ground in a hot summer is a few degrees
// above the air.
func TestSoilIsSaneInland(t *testing.T) {
	settle := func(mean, rad float64) float64 {
		s := NewSoil(mean, rad)
		for range 60 {
			s.Step(mean, rad)
		}
		return s.TemperatureC()
	}
	if got := settle(-12, 6); got < -6 || got > -1 {
		t.Errorf("snowy winter: %.1f C", got)
	}
	if got := settle(27, 26); got < 29 || got > 34 {
		t.Errorf("hot summer: %.1f C", got)
	}
}

// After a jump of the air the ground has made two thirds of its way in a few
// days and is nearly there after a fortnight, from any start.
func TestSoilForgetsItsStart(t *testing.T) {
	s := NewSoil(0, 5)
	for range 21 {
		s.Step(15, 15)
	}
	if want := surfaceC(15, 15); math.Abs(s.TemperatureC()-want) > 0.8 {
		t.Errorf("%.1f C after three weeks, going to %.1f", s.TemperatureC(), want)
	}
}
