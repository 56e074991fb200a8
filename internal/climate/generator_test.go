package climate

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/sun"
)

// deBiltNormals are rows of the De Bilt 1980-2019 series (KNMI).
func deBiltNormals() (n Normals) {
	tmin := [12]float64{0.45, 0.27, 2.21, 4.20, 7.84, 10.63, 12.86, 12.33, 9.96, 7.04, 3.69, 1.50}
	tmax := [12]float64{5.73, 6.59, 10.16, 14.22, 18.13, 20.54, 22.83, 22.58, 19.25, 14.80, 9.70, 6.61}
	rain := [12]float64{72.2, 56.1, 63.1, 42.6, 59.5, 68.2, 84.6, 74.8, 75.8, 82.1, 78.1, 80.2}
	rad := [12]float64{2.32, 4.68, 8.27, 13.75, 17.24, 17.86, 17.57, 14.92, 10.26, 6.05, 2.83, 1.73}
	for i := range n {
		n[i] = MonthNormal{TMinC: tmin[i], TMaxC: tmax[i], RainMM: rain[i], RadiationMJ: Is(rad[i])}
	}
	return n
}

func TestX(t *testing.T) {
	g, err := NewGenerator(deBiltNormals(), sun.Location{LatitudeDeg: 52.1, ElevationM: 2})
	if err != nil {
		t.Fatal(err)
	}
	days := g.Days(1, 0, 0, cal.Of(2001, 1, 1), 365243)
	var sum [12]Day
	var n [12]float64
	for i, d := range days {
		m := (cal.Of(2001, 1, 1) + cal.Date(i)).Month() - 1
		sum[m].TMinC += d.TMinC
		sum[m].TMaxC += d.TMaxC
		sum[m].RainMM += d.RainMM
		sum[m].RadiationMJ += d.RadiationMJ
		n[m]++
	}
	for m := range sum {
		t.Logf("%2d %6.2f %6.2f %6.1f %6.2f", m+1, sum[m].TMinC/n[m], sum[m].TMaxC/n[m], sum[m].RainMM/1000, sum[m].RadiationMJ/n[m])
	}
}
