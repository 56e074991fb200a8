package soilcare

import (
	"testing"

	"garner/internal/crop/croptest"
)

// Beside its sources, every crop's trait is one that the package knows.
func TestDataHaveSources(t *testing.T) {
	croptest.Sourced(t, data, 3)
	f, err := known()
	if err != nil {
		t.Fatal(err)
	}
	for crop, trait := range f.traits {
		if trait != forks && trait != scabs && trait != clear {
			t.Errorf("%s: trait %q", crop, trait)
		}
	}
}
