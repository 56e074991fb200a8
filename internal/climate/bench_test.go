package climate

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/sun"
)

// deBiltNormals are rows of the De Bilt series 1980-2019 (KNMI; testdata/normals.csv).
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

var benchPlace = sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.18, ElevationM: 2}

func BenchmarkNewGenerator(b *testing.B) {
	n := deBiltNormals()
	for b.Loop() {
		NewGenerator(n, benchPlace)
	}
}

// One future of 78 weeks.
func BenchmarkGeneratorDays(b *testing.B) {
	g, _ := NewGenerator(deBiltNormals(), benchPlace)
	out := make([]Day, 0, 546)
	future := uint64(0)
	for b.Loop() {
		out = g.appendDays(out[:0], key{1, future, 0}, cal.Of(2027, 1, 4), 546)
		future++
	}
}
func benchRecord(b *testing.B) *Record {
	g, _ := NewGenerator(deBiltNormals(), benchPlace)
	return recordOf(cal.Of(1988, 1, 1), g.Days(1, 0, 0, cal.Of(1988, 1, 1), 39*365+10))
}
func BenchmarkFitGenerator(b *testing.B) {
	r := benchRecord(b)
	for b.Loop() {
		FitGenerator(r, benchPlace)
	}
}
func BenchmarkNewFuturesOfRecord(b *testing.B) {
	r := benchRecord(b)
	for b.Loop() {
		NewFutures(benchPlace, Source{Record: r}, cal.Of(2027, 1, 4))
	}
}

// 200 futures of 78 weeks at two sites.
func BenchmarkFutures(b *testing.B) {
	n := deBiltNormals()
	for name, src := range map[string]Source{"generated": {Normals: &n}, "replayed": {Record: benchRecord(b)}} {
		b.Run(name, func(b *testing.B) {
			f, err := NewFutures(benchPlace, src, cal.Of(2027, 1, 4))
			if err != nil {
				b.Fatal(err)
			}
			var out []Day
			for b.Loop() {
				for future := range 200 {
					for site := range uint64(2) {
						out = f.Days(1, future, site, cal.Of(2027, 1, 4), 546, out)
					}
				}
			}
		})
	}
}

func BenchmarkSoilStep(b *testing.B) {
	s := NewSoil(10, 10)
	for b.Loop() {
		s.Step(11, 12)
	}
}
