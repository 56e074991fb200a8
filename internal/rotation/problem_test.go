package rotation

import (
	"testing"

	"garner/internal/crop"
)

// Every number has a source of the crop book and a mark, every host is a crop or
// a family of it, and every problem has an interval.
func TestDataHaveSourcesAndHosts(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	families := map[string]bool{}
	for _, f := range book.Families() {
		families[f.Botanical] = true
	}
	hosts := func(of string, list []string) {
		for _, name := range list {
			if _, ok := book.Crop(name); !ok && !families[name] {
				t.Errorf("%s: %q is no crop and no family of the book", of, name)
			}
		}
	}
	sourced := func(of, source, mark string) {
		if _, ok := book.Source(source); !ok {
			t.Errorf("%s: no source %q", of, source)
		}
		if mark != "seen" && mark != "memory" && mark != "judgement" {
			t.Errorf("%s: mark %q", of, mark)
		}
	}
	f, err := known()
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]bool{}
	for _, n := range f.intervals {
		told[n.Problem] = true
		hosts(n.Problem, n.Crops)
		hosts(n.Problem, n.Across)
		sourced(n.Problem, n.Source, n.Mark)
		if n.Kind != rest && n.Kind != partial && n.Kind != lasts {
			t.Errorf("%s: kind %q", n.Problem, n.Kind)
		}
	}
	for _, p := range f.problems {
		hosts(p.ID, p.Hosts)
		sourced(p.ID, p.Source, p.Mark)
		if !told[p.ID] {
			t.Errorf("%s has no interval", p.ID)
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
