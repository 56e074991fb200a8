package rotation

import (
	"testing"

	"garner/internal/crop/croptest"
)

// Beside their sources, every interval is of a known kind, and every problem has
// one and the crops it strikes.
func TestDataHaveSourcesAndHosts(t *testing.T) {
	croptest.Sourced(t, data, 2)
	f, err := known()
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]bool{}
	for _, n := range f.intervals {
		told[n.Problem] = true
		if n.Kind != rest && n.Kind != partial && n.Kind != lasts {
			t.Errorf("%s: kind %q", n.Problem, n.Kind)
		}
	}
	for _, p := range f.problems {
		if !told[p.ID] || len(p.Hosts) == 0 {
			t.Errorf("%s has no interval or no hosts", p.ID)
		}
	}
}

func TestFindTellsTheNearest(t *testing.T) {
	if p, _, ok := Find("White Rot"); !ok || p.ID != "white-rot" {
		t.Errorf("white rot: %+v", p)
	}
	if _, near, ok := Find("clubrot"); ok || near != "clubroot" {
		t.Errorf("clubrot: %q", near)
	}
	if _, near, ok := Find("rain"); ok || near != "" {
		t.Errorf("rain: %q", near)
	}
}
