package crop

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"garner/internal/fault"
)

// Every crop named in the planting date tables of ten regions (Iowa, Utah, North
// Florida, South Carolina, southern England, the USDA frost zones, Kansas; the
// publication stands beside each name) is found.
func TestNamesOfPlantingTablesAreFound(t *testing.T) {
	book := load(t)
	for _, r := range readTestdata(t, "planting_dates_names.csv") {
		if _, _, err := book.Find(r["name"]); err != nil {
			t.Errorf("%q of %s: %v", r["name"], r["region"], err)
		}
	}
}

func TestFind(t *testing.T) {
	book := load(t)
	for _, c := range []struct{ given, crop, use string }{
		{"carrot", "carrot", "table"},
		{"Carrots", "carrot", "table"},
		{"CARROT, storage", "carrot", "storage"},
		{"storage carrot", "carrot", "storage"},
		{"Daucus carota subsp. sativus", "carrot", "table"},
		{"rutabaga", "swede", "winter"},
		{"beet", "beetroot", "table"},
		{"turnip greens", "turnip", "tops"},
		{"onion (sets)", "onion", "sets"},
		{"scallions", "spring-onion", "summer"},
		{"jerusalem-artichoke", "jerusalem-artichoke", "winter"},
		{"artichoke, Jerusalem", "jerusalem-artichoke", "winter"},
		{"sweet  potatoes", "sweet-potato", "storage"},
	} {
		crop, use, err := book.Find(c.given)
		if err != nil {
			t.Errorf("%q: %v", c.given, err)
			continue
		}
		if crop.ID != c.crop || use.Name != c.use {
			t.Errorf("%q is %s/%s, want %s/%s", c.given, crop.ID, use.Name, c.crop, c.use)
		}
	}
}

func TestEveryCropIsFoundByItsNames(t *testing.T) {
	for _, c := range load(t).Crops() {
		for _, name := range []string{c.ID, c.Name, c.Plural, strings.ToUpper(c.Name)} {
			if found, _, err := load(t).Find(name); err != nil || found.ID != c.ID {
				t.Errorf("%q does not find %s: %v", name, c.ID, err)
			}
		}
	}
}

func TestUnknownNameTellsTheNearest(t *testing.T) {
	_, _, err := load(t).Find("carot")
	var unknown *fault.Error
	if !errors.As(err, &unknown) || unknown.Kind != fault.NotFound {
		t.Fatalf("got %v, want a fault of what is not found", err)
	}
	if near, _ := unknown.Phrase.Args["near"].(string); !strings.Contains(near, "carrot") {
		t.Errorf("near is %q, without carrot", near)
	}
	for _, name := range []string{"", "   ", "xyzzy-plugh", strings.Repeat("a", 5000), "\x00\xff"} {
		if _, _, err := load(t).Find(name); fault.KindOf(err) != fault.NotFound {
			t.Errorf("%.20q: got %v, want a fault of what is not found", name, err)
		}
	}
}

func TestUnknownUseTellsTheUses(t *testing.T) {
	c, _, err := load(t).Find("carrot")
	if err != nil {
		t.Fatal(err)
	}
	_, err = c.Use("jam")
	var unknown *fault.Error
	if !errors.As(err, &unknown) || !strings.Contains(unknown.Phrase.Args["uses"].(string), "storage") {
		t.Errorf("got %v, want the uses of carrot", err)
	}
	if u, err := c.Use(""); err != nil || u.Name != c.CommonUse {
		t.Errorf("no use named gives %v, %v; want the common use", u, err)
	}
}

// A crop's names lead back to it, and a name nobody knows to several crops.
func TestNamesOfACropLeadToIt(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range b.Crops() {
		for _, n := range b.NamesOf(c.ID) {
			found, use, err := b.Find(n.Text)
			if err != nil || found != c || n.Use != "" && use.Name != n.Use {
				t.Errorf("%s is a name of %s and leads elsewhere", n.Text, c.ID)
			}
		}
		if !slices.Contains(b.Called(c.Botanical), c) {
			t.Errorf("%s is not found as %s", c.ID, c.Botanical)
		}
	}
	if got := b.Nearest("letuce", 3); len(got) == 0 || got[0] != "lettuce" {
		t.Errorf("nearest to letuce is %v", got)
	}
	if got := b.Called("unicorn"); got != nil {
		t.Errorf("unicorn is %v", got)
	}
}
