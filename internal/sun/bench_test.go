package sun

import "testing"

var sink float64

func BenchmarkPositionAt(b *testing.B) {
	at := Location{LatitudeDeg: 51.5, LongitudeDeg: -1}
	for i := range b.N {
		sink += PositionAt(at, int64(i)*900).ElevationDeg
	}
}

func BenchmarkDayLengthH(b *testing.B) {
	for i := range b.N {
		sink += DayLengthH(51.5, i%365+1)
	}
}

func BenchmarkExtraterrestrialMJ(b *testing.B) {
	for i := range b.N {
		sink += ExtraterrestrialMJ(51.5, i%365+1)
	}
}

func BenchmarkDiffuseShare(b *testing.B) {
	for i := range b.N {
		sink += DiffuseShare(float64(i%100)/100, 1.9)
	}
}
