package gazetteer

import (
	"testing"

	"garner/internal/sun"
)

// BenchmarkCold times the reading of all places and normals, as on the first
// look-up of a process.
func BenchmarkCold(b *testing.B) {
	for b.Loop() {
		a, err := readAtlas()
		if err != nil {
			b.Fatal(err)
		}
		if text, err := unpacked(normalsFile); err != nil || len(text) == 0 || len(a.places) == 0 {
			b.Fatal(err)
		}
	}
}

// Every other name leads to a place within reach of it.
func TestAliasesLeadSomewhere(t *testing.T) {
	a := read()
	if len(a.aliases) < 50 {
		t.Errorf("%d other names", len(a.aliases))
	}
	for _, l := range a.aliases {
		if len((sun.Location{}).Check()) > 0 || l.folded.name == "" {
			t.Errorf("%+v", l)
		}
	}
	known := map[string]bool{}
	for i := range a.names {
		known[a.names[i].country] = true
	}
	for other, own := range a.country {
		if !known[own] {
			t.Errorf("%s stands for %s, which has no station", other, own)
		}
	}
}
