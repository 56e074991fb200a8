package cover

import (
	"errors"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/fault"
)

func TestLookupListsTheKinds(t *testing.T) {
	for _, kind := range Kinds() {
		if c := mustLookup(t, kind); c.Kind() != kind {
			t.Errorf("%s gave %s", kind, c.Kind())
		}
	}
	_, err := Lookup("greenhose")
	var f *fault.Error
	if !errors.As(err, &f) || f.Kind != fault.NotFound {
		t.Fatalf("want a fault of kind not found, got %v", err)
	}
	for _, kind := range Kinds() {
		if !strings.Contains(f.Phrase.Args["kinds"].(string), string(kind)) {
			t.Errorf("the fault does not list %s", kind)
		}
	}
}

func TestKindsIsACopy(t *testing.T) {
	Kinds()[0] = "changed"
	if Kinds()[0] != Open {
		t.Error("the list of kinds can be changed from outside")
	}
}

// TestDataIsRefused: the loader takes no number without unit, source and mark,
// none outside its range, and no cover with a number missing.
func TestDataIsRefused(t *testing.T) {
	swap := func(old, new string) string { return strings.Replace(coversCSV, old, new, 1) }
	for name, text := range map[string]string{
		"unit":    swap("mesh,light_share,0.86,1", "mesh,light_share,0.86,%"),
		"range":   swap("mesh,light_share,0.86,1", "mesh,light_share,1.86,1"),
		"blank":   swap("mesh,light_share,0.86,1", "mesh,light_share,,1"),
		"mark":    swap(",memory\n", ",heard\n"),
		"cover":   swap("mesh,", "mash,"),
		"name":    swap("light_share", "light"),
		"missing": coversCSV[:strings.LastIndex(strings.TrimSpace(coversCSV), "\n")+1],
	} {
		if _, err := read(text, layersCSV); err == nil {
			t.Errorf("%s: wrong data was taken", name)
		}
	}
	if _, err := read(coversCSV, "cover,within\nfleece,attic\n"); err == nil {
		t.Error("a layer within an unknown cover was taken")
	}
}

// TestNightsNeverRiseWithClearness holds what the model rests on: no cover is
// warmer on a clear night than under cloud.
func TestNightsNeverRiseWithClearness(t *testing.T) {
	for _, kind := range Kinds() {
		f := mustLookup(t, kind).own
		if f.nightClearC > f.nightOvercastC || f.nightStillC > 0 || f.nightOpenAboveC > f.dayOpenAboveC {
			t.Errorf("%s: %+v", kind, f)
		}
	}
}

func TestBarrier(t *testing.T) {
	if mm, ok := mustLookup(t, Mesh).Barrier(); !ok || mm != 1.3 {
		t.Errorf("mesh: %v %v", mm, ok)
	}
	for _, kind := range []Kind{Open, Tunnel, Indoors} {
		if _, ok := mustLookup(t, kind).Barrier(); ok {
			t.Errorf("%s is no barrier", kind)
		}
	}
}

func TestAt(t *testing.T) {
	spells := []Spell{
		{Kind: Fleece, On: cal.Of(2027, 3, 1), Off: cal.Of(2027, 4, 10)},
		{Kind: Mesh, On: cal.Of(2027, 4, 10), Off: cal.Of(2027, 8, 1)},
		{Kind: Tunnel, On: cal.Of(2027, 10, 1), Off: cal.None},
		{Kind: Cloche, On: cal.Of(2027, 6, 1), Off: cal.Of(2027, 7, 1)},
	}
	for _, c := range []struct {
		date cal.Date
		want Kind
	}{
		{cal.Of(2027, 2, 28), Open}, {cal.Of(2027, 3, 1), Fleece}, {cal.Of(2027, 4, 9), Fleece},
		{cal.Of(2027, 4, 10), Mesh}, {cal.Of(2027, 6, 15), Cloche}, {cal.Of(2027, 7, 1), Mesh},
		{cal.Of(2027, 8, 1), Open}, {cal.Of(2030, 1, 1), Tunnel},
	} {
		if got := At(spells, c.date); got != c.want {
			t.Errorf("%s: %s, want %s", c.date, got, c.want)
		}
	}
	if got := At(nil, cal.Of(2027, 1, 1)); got != Open {
		t.Errorf("no spells: %s", got)
	}
}

func TestCheck(t *testing.T) {
	march, april, may := cal.Of(2027, 3, 1), cal.Of(2027, 4, 1), cal.Of(2027, 5, 1)
	for _, c := range []struct {
		name   string
		spells []Spell
		key    string
	}{
		{"none", nil, ""},
		{"one after the other", []Spell{{Kind: Mesh, On: april, Off: may}, {Kind: Fleece, On: march, Off: april}}, ""},
		{"over each other", []Spell{{Kind: Mesh, On: april, Off: may}, {Kind: Fleece, On: march, Off: april + 1}}, "cover.overlap"},
		{"the first stays", []Spell{{Kind: Tunnel, On: march, Off: cal.None}, {Kind: Fleece, On: may, Off: may + 9}}, "cover.overlap"},
		{"off before on", []Spell{{Kind: Mesh, On: may, Off: april}}, "cover.off_before_on"},
		{"unknown", []Spell{{Kind: "hat", On: march, Off: may}}, "cover.unknown_kind"},
	} {
		got := ""
		if f := Check(c.spells); f != nil {
			got = f.Phrase.Key
		}
		if got != c.key {
			t.Errorf("%s: %q, want %q", c.name, got, c.key)
		}
	}
}
