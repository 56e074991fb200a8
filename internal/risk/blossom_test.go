package risk

import (
	"math"
	"os"
	"slices"
	"testing"

	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/table"
	"garner/internal/words"
)

// A tenth and nine tenths of the blossom are lost at the published temperatures.
// Source: Penn State Extension after Washington State University EB0419: 28 and 25 F
// kill a tenth and nine tenths of apples in full bloom.
func TestBlossom(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for i := range b.Blossoms {
		x := &b.Blossoms[i]
		if !words.English().Has(x.Name().Key) {
			t.Errorf("no text for %s", x.Stage)
		}
		if i > 0 && x.Crop == b.Blossoms[i-1].Crop && x.Known() && x.SumCd <= b.Blossoms[i-1].SumCd {
			t.Errorf("%s comes before the stage before it", x.Stage)
		}
		if _, ok := book.Crop(x.Crop); !ok {
			t.Errorf("no crop %s", x.Crop)
		}
		if math.Abs(x.Lost(x.Kill10C)-0.1) > 1e-9 || math.Abs(x.Lost(x.Kill90C)-0.9) > 1e-9 || x.Lost(5) != 0 || x.Lost(-30) != 1 {
			t.Errorf("%+v", *x)
		}
		if x.Crop == "apple" && x.Stage == "full_bloom" {
			if math.Abs(x.Kill10C-(28-32)/1.8) > 0.05 || math.Abs(x.Kill90C-(25-32)/1.8) > 0.05 {
				t.Errorf("apples in full bloom: %+v", *x)
			}
		}
	}
}

// The temperatures of blossom come out as printed in Fahrenheit, each that was read.
// Sources: testdata/blossom.csv.
func TestPublishedBlossom(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	printed, err := table.OpenCells(os.DirFS("testdata"), "blossom.csv", "crop", "stage", "kill_10_f", "kill_90_f", "source")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for r := range printed.Rows {
		i := slices.IndexFunc(b.Blossoms, func(x Blossom) bool { return x.Crop == printed.Text(r, "crop") && x.Stage == printed.Text(r, "stage") })
		if i < 0 {
			t.Errorf("row %d is not in the data", r+2)
			continue
		}
		x := &b.Blossoms[i]
		for _, c := range []struct{ c, f float64 }{{x.Kill10C, printed.Within(r, "kill_10_f", 0, 32)}, {x.Kill90C, printed.Within(r, "kill_90_f", 0, 32)}} {
			if math.Abs(c.c-(c.f-32)/1.8) > 0.06 {
				t.Errorf("%s, %s: %g C, printed %g F", x.Crop, x.Stage, c.c, c.f)
			}
		}
		seen++
	}
	for i := range b.Blossoms {
		if b.Blossoms[i].Mark == "seen" {
			seen--
		}
	}
	if seen != 0 || printed.Err() != nil {
		t.Errorf("%d rows more than were read, %v", seen, printed.Err())
	}
}

// Heat is of its crops and covers, begins at its lower figure, and has its text.
// Common practice, no source: doors from 25 C, poor set above 32-35 C, lettuce seed
// from 25-28 C.
func TestHeat(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	fired := func(name string, kind cover.Kind, maxC, soilC float64) (out []string) {
		for i := range b.Heats {
			h := &b.Heats[i]
			of := maxC
			if h.OfSoil() {
				of = soilC
			}
			if h.For(name, kind) && h.Fires(of) {
				out = append(out, h.ID)
			}
			if !words.English().Has(h.Does().Key) {
				t.Errorf("no text for %s", h.ID)
			}
		}
		return out
	}
	for _, c := range []struct {
		crop       string
		kind       cover.Kind
		maxC, soil float64
		want       []string
	}{
		{"tomato", cover.Open, 31, 20, nil},
		{"tomato", cover.Open, 33, 20, []string{"poor_set"}},
		{"tomato", cover.Tunnel, 33, 20, []string{"open_doors", "shade_net", "poor_set"}},
		{"carrot", cover.Fleece, 26, 20, []string{"fleece_off"}},
		{"carrot", cover.Tunnel, 26, 20, []string{"open_doors"}},
		{"lettuce", cover.Open, 24, 26, []string{"sleeping_seed"}},
		{"carrot", cover.Open, 36, 30, nil},
	} {
		if got := fired(c.crop, c.kind, c.maxC, c.soil); !slices.Equal(got, c.want) {
			t.Errorf("%s, %s, %g C: %v, want %v", c.crop, c.kind, c.maxC, got, c.want)
		}
	}
	for i := range b.Heats {
		if h := &b.Heats[i]; h.Degree(h.FromC-1) != 0 || h.Degree(h.ToC) != 1 {
			t.Errorf("%+v", *h)
		}
	}
	if doors := &b.Heats[0]; !doors.OfShut() {
		t.Errorf("doors are judged as they are opened: %+v", *doors)
	}
}
