package cover

import (
	"testing"

	"pgregory.net/rapid"

	"garner/internal/climate"
)

// Shut, a cover is never cooler by day than opened, and as warm by night; fleece under a
// cover never makes a night colder, and in a tunnel it is the kind of that name.
func TestShutAndWithFleece(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		low := rapid.Float64Range(-15, 20).Draw(r, "minimum")
		day := climate.Day{TMinC: low, TMaxC: low + rapid.Float64Range(0, 20).Draw(r, "range"), RadiationMJ: rapid.Float64Range(0, 30).Draw(r, "radiation"),
			HumidityPct: 70, WindMS: rapid.Float64Range(0, 8).Draw(r, "wind")}
		kind := rapid.SampledFrom(kinds).Draw(r, "kind")
		c, err := Lookup(kind)
		if err != nil {
			r.Fatal(err)
		}
		open, shut := c.Under(day, 40), c.Shut(day, 40)
		if shut.TMaxC < open.TMaxC-1e-9 || shut.TMinC != open.TMinC {
			r.Fatalf("%s: opened %v, shut %v", kind, open, shut)
		}
		if !c.Opens() && c.outer == nil && shut != open {
			r.Fatalf("%s is never opened: %v, %v", kind, open, shut)
		}
		inner, ok := c.WithFleece()
		if !ok {
			return
		}
		with := inner.Under(day, 40)
		if with.TMinC < open.TMinC-1e-9 || with.RadiationMJ > open.RadiationMJ {
			r.Fatalf("fleece under %s: %v, without %v", kind, with, open)
		}
		if both, err := Lookup(TunnelInner); err == nil && kind == Tunnel && with != both.Under(day, 40) {
			r.Fatalf("fleece in a tunnel: %v, as a kind %v", with, both.Under(day, 40))
		}
	})
}
