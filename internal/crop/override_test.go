package crop

import (
	"strings"
	"testing"

	"garner/internal/fault"
)

func TestOverrideGoesBeforeTheBook(t *testing.T) {
	book := load(t)
	before := *use(t, book, "carrot", "table")
	changed, faults := book.With([]Override{
		{ID: "own1", Crop: "Carrots", Use: "table", Parameter: "days_seed", Value: "82", Unit: "d", Source: "my diary"},
		{ID: "own2", Crop: "carrot", Parameter: "seed_life_years", Value: "4", Unit: "a", Source: "my tin"},
	})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	table, storage := use(t, changed, "carrot", "table"), use(t, changed, "carrot", "storage")
	if table.DaysSeed != 82 || storage.DaysSeed == 82 {
		t.Errorf("days from sowing: table %g, storage %g; want 82 for the table alone", table.DaysSeed, storage.DaysSeed)
	}
	if table.SeedLifeYears != 4 || storage.SeedLifeYears != 4 {
		t.Error("a number of the whole crop did not reach all its uses")
	}
	if f := table.Fact("days_seed"); f.Mark != "own" || f.Source != "my diary" || f.Value != 82 {
		t.Errorf("provenance of the grower's number: %+v", f)
	}
	if now := use(t, book, "carrot", "table"); now.DaysSeed != before.DaysSeed || now.Fact("days_seed").Mark == "own" {
		t.Error("the book itself has changed")
	}
	if _, u, _ := changed.Find("carrot, storage"); u.SeedLifeYears != 4 {
		t.Error("a synonym still leads to the old use")
	}
	if again, _ := changed.Crop("carrot"); again.Uses[1].SeedLifeYears != 4 {
		t.Error("the id still leads to the old crop")
	}
}

func TestFaultyOverridesAreTold(t *testing.T) {
	book := load(t)
	good := Override{ID: "own1", Crop: "carrot", Use: "table", Parameter: "days_seed", Value: "82", Unit: "d"}
	for _, c := range []struct {
		what   string
		change func(*Override)
		column string
		key    string
	}{
		{"unknown crop", func(o *Override) { o.Crop = "carot" }, "crop", "crop.unknown"},
		{"unknown use", func(o *Override) { o.Use = "jam" }, "use", "crop.use_unknown"},
		{"unknown parameter", func(o *Override) { o.Parameter = "day_seed" }, "parameter", "crop.parameter_unknown"},
		{"parameter that does not apply", func(o *Override) { o.Parameter = "season_days" }, "parameter", "crop.parameter_not_needed"},
		{"no number", func(o *Override) { o.Value = "eighty" }, "value", "crop.not_a_number"},
		{"unit slip", func(o *Override) { o.Unit = "weeks" }, "unit", "crop.unit_differs"},
		{"out of range", func(o *Override) { o.Value = "8000" }, "value", "crop.out_of_range"},
	} {
		o := good
		c.change(&o)
		changed, faults := book.With([]Override{o})
		if len(faults) != 1 || faults[0].Phrase.Key != c.key || faults[0].At.Column != c.column {
			t.Errorf("%s: got %v, want %s at %s", c.what, faults, c.key, c.column)
			continue
		}
		if faults[0].Phrase.Args["id"] != "own1" {
			t.Errorf("%s: the fault does not name the override", c.what)
		}
		if use(t, changed, "carrot", "table").DaysSeed != use(t, book, "carrot", "table").DaysSeed {
			t.Errorf("%s: the number has changed all the same", c.what)
		}
	}
}

func TestContradictingOverridesAreNotApplied(t *testing.T) {
	book := load(t)
	changed, faults := book.With([]Override{{ID: "own1", Crop: "carrot", Use: "table", Parameter: "optimum_c", Value: "36", Unit: "C"}})
	if len(faults) != 1 || faults[0].Kind != fault.Invalid || !strings.Contains(faults[0].Error(), "ceiling_c") || faults[0].Phrase.Args["id"] != "own1" {
		t.Fatalf("an optimum above the ceiling: %v", faults)
	}
	if use(t, changed, "carrot", "table").OptimumC == 36 {
		t.Error("the number has changed all the same")
	}
}
