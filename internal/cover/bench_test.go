package cover

import (
	"testing"

	"garner/internal/climate"
)

var sink climate.Day

func benchmarkUnder(b *testing.B, kind Kind) {
	c := mustLookup(b, kind)
	day := climate.Day{TMinC: 3, TMaxC: 14, RainMM: 1, RadiationMJ: 12, HumidityPct: 78, WindMS: 1.5}
	b.ReportAllocs()
	for i := range b.N {
		day.RadiationMJ = float64(i & 15)
		sink = c.Under(day, 30)
	}
}

func BenchmarkUnderOpen(b *testing.B)        { benchmarkUnder(b, Open) }
func BenchmarkUnderTunnel(b *testing.B)      { benchmarkUnder(b, Tunnel) }
func BenchmarkUnderTunnelInner(b *testing.B) { benchmarkUnder(b, TunnelInner) }
func BenchmarkUnderIndoors(b *testing.B)     { benchmarkUnder(b, Indoors) }
