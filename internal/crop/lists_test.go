package crop_test

import (
	"slices"
	"testing"

	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/plan"
)

// The book's words for covers and methods are those of the plan.
func TestReferencePlantingsSpeakThePlansWords(t *testing.T) {
	covers := []cover.Kind{cover.Open, cover.Mesh, cover.Fleece, cover.Cloche, cover.LowTunnel, cover.ColdFrame,
		cover.Tunnel, cover.TunnelTwo, cover.Glasshouse, cover.TunnelInner, cover.Indoors}
	methods := []plan.Method{plan.Seed, plan.Plant, plan.Set, plan.Crown, plan.Cutting}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if !slices.Contains(covers, cover.Kind(u.ReferenceCover)) {
				t.Errorf("%s %s: no cover is called %q", c.ID, u.Name, u.ReferenceCover)
			}
			for _, m := range u.Methods {
				if !slices.Contains(methods, plan.Method(m)) {
					t.Errorf("%s %s: no method is called %q", c.ID, u.Name, m)
				}
			}
		}
	}
}
