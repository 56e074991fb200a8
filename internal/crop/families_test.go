package crop

import (
	"cmp"
	"slices"
	"testing"
)

// Crops of one family are named and moved together.
func TestCropsHaveTheNamesOfTheirFamily(t *testing.T) {
	book := load(t)
	for _, c := range book.Crops() {
		if c.FamilyName == "" || !slices.Contains(rotationGroups, c.RotationGroup) {
			t.Errorf("%s: family %q in rotation group %q", c.ID, c.FamilyName, c.RotationGroup)
		}
	}
	// The groups of the Royal Horticultural Society's advice on rotation.
	for _, want := range []struct{ crop, family, group string }{
		{"swede", "cabbage family", "brassicas"},
		{"radish", "cabbage family", "brassicas"},
		{"leek", "onion family", "onions"},
		{"broad bean", "pea family", "legumes"},
		{"parsnip", "carrot family", "roots"},
		{"beetroot", "beet family", "roots"},
		{"tomato", "potato family", "potatoes"},
		{"courgette", "cucumber family", "anywhere"},
		{"sweetcorn", "grass family", "anywhere"},
		{"asparagus", "asparagus family", "permanent"},
	} {
		c, _, err := book.Find(want.crop)
		if err != nil {
			t.Fatal(err)
		}
		if c.FamilyName != want.family || c.RotationGroup != want.group {
			t.Errorf("%s: %s in %s, want %s in %s", want.crop, c.FamilyName, c.RotationGroup, want.family, want.group)
		}
	}
}

func TestFamiliesAreSortedAndNamedOnce(t *testing.T) {
	names := map[string]string{}
	list := load(t).Families()
	if !slices.IsSortedFunc(list, func(a, b Family) int { return cmp.Compare(a.Botanical, b.Botanical) }) {
		t.Error("the families are not sorted")
	}
	for _, f := range list {
		if other, twice := names[f.Name]; twice {
			t.Errorf("%s and %s are both the %s", other, f.Botanical, f.Name)
		}
		names[f.Name] = f.Botanical
	}
	for _, coming := range []string{"Lamiaceae", "Oxalidaceae", "Zingiberaceae", "Boraginaceae"} {
		if !slices.ContainsFunc(list, func(f Family) bool { return f.Botanical == coming }) {
			t.Errorf("%s is not in the list", coming)
		}
	}
}
