package sample_test

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/crop"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/sample"
)

// names are the demo holdings.
var names = []string{"main", "south"}

// open reads a demo holding and stops at any fault or warning.
func open(t *testing.T, name string) (*holding.Holding, fs.FS) {
	t.Helper()
	files, err := sample.Files(name)
	if err != nil {
		t.Fatal(err)
	}
	h, report := exchange.ReadFolder(files)
	if len(report.Faults)+len(report.Warnings) > 0 {
		t.Fatalf("%s: %v %v", name, report.Faults, report.Warnings)
	}
	return h, files
}

func bookOf(t *testing.T) *crop.Book {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return book
}

func TestTheHoldingsAreSound(t *testing.T) {
	for _, name := range names {
		h, _ := open(t, name)
		if faults := exchange.Check(h, bookOf(t)); len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

// Writing a demo holding again gives the very files it was read from.
func TestTheFilesAreAsWritten(t *testing.T) {
	for _, name := range names {
		h, files := open(t, name)
		written, err := exchange.Write(h)
		if err != nil {
			t.Fatal(err)
		}
		kept := map[string]bool{}
		err = fs.WalkDir(files, ".", func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			kept[path] = true
			content, err := fs.ReadFile(files, path)
			if err == nil && !bytes.Equal(content, written[path]) {
				t.Errorf("%s: %s is not as it would be written", name, path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		for path := range written {
			if !kept[path] {
				t.Errorf("%s: %s is missing", name, path)
			}
		}
	}
}

func TestUnknownHoldingsAreRefused(t *testing.T) {
	for _, name := range []string{"east", "main/weather", "../main"} {
		if _, err := sample.Files(name); err == nil {
			t.Errorf("%q was found", name)
		}
	}
	byDefault, err := sample.Files("")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fs.Stat(byDefault, "holding.csv"); err != nil {
		t.Error(err)
	}
}

// The demo is a household of four with about 25 beds in two places and about
// 120 plantings; its own today is 4 January 2027.
func TestTheHouseholdOfFour(t *testing.T) {
	h, _ := open(t, "main")
	got := map[string]int{"eaters": int(h.Eaters), "sites": len(h.Sites), "beds": len(h.Beds), "plantings": len(h.Plantings)}
	want := map[string]int{"eaters": 4, "sites": 2, "beds": 25, "plantings": len(h.Plantings)}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if n := len(h.Plantings); n < 110 || n > 140 {
		t.Errorf("%d plantings", n)
	}
	for _, name := range names {
		if h, _ := open(t, name); h.Today.String() != "2027-01-04" {
			t.Errorf("%s: today is %s", name, h.Today)
		}
	}
	if first, last := span(h); int(last-first) < 500 {
		t.Errorf("plantings from %s to %s", first, last)
	}
}

// The household in the south is small: two eaters, five or six beds, 15 to 25
// plantings, and monthly normals for all weather.
func TestTheHouseholdOfTwo(t *testing.T) {
	h, _ := open(t, "south")
	if h.Eaters != 2 || len(h.Beds) < 5 || len(h.Beds) > 6 || len(h.Plantings) < 15 || len(h.Plantings) > 25 {
		t.Errorf("%v eaters, %d beds, %d plantings", h.Eaters, len(h.Beds), len(h.Plantings))
	}
	if h.Sites[0].Location.LatitudeDeg > -40 || h.Weather[0].Normals == nil || h.Weather[0].Record != nil {
		t.Error("not a southern place known by its normals")
	}
}

// The demo shows every way to start a planting and crops of every part of the
// book.
func TestTheDemoShowsEveryStart(t *testing.T) {
	h, _ := open(t, "main")
	book := bookOf(t)
	methods, patterns := map[string]bool{}, map[string]bool{}
	for _, p := range h.Plantings {
		methods[string(p.Method)] = true
		c, _ := book.Crop(p.Crop)
		u, err := c.Use(p.Use)
		if err != nil {
			t.Fatal(err)
		}
		patterns[string(u.Pattern)] = true
	}
	for _, m := range []string{"seed", "plant", "set", "crown"} {
		if !methods[m] {
			t.Errorf("no planting starts as %s", m)
		}
	}
	for _, p := range []string{"pull", "picking", "cut", "perennial"} {
		if !patterns[p] {
			t.Errorf("no planting is picked by the pattern %s", p)
		}
	}
}

// All names of varieties are invented: one word each, with no breeder's name.
func TestVarietiesHaveInventedNames(t *testing.T) {
	for _, name := range names {
		h, _ := open(t, name)
		for _, v := range h.Varieties {
			if !strings.EqualFold(v.ID, v.Name) || strings.ContainsAny(v.Name, " '0123456789") {
				t.Errorf("%s: variety %q", name, v.Name)
			}
		}
	}
}
