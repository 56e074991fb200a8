package crop

import (
	"strconv"
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

// Every number of the book can be put right by the grower for a use that has it,
// and is held to its unit and range as the book's own.
func TestEveryNumberCanBeOverridden(t *testing.T) {
	book := load(t)
	for _, p := range book.Parameters() {
		u := useWith(t, book, p.Name)
		o := Override{ID: "own1", Crop: u.Crop, Use: u.Name, Parameter: p.Name, Unit: p.Unit, Source: "my diary"}
		value, fine := nudged(t, book, u, &p, o)
		if !fine {
			t.Errorf("%s %s: %s cannot be moved from %g", u.Crop, u.Name, p.Name, p.get(u))
			continue
		}
		o.Value = strconv.FormatFloat(value, 'f', -1, 64)
		changed, faults := book.With([]Override{o})
		now := use(t, changed, u.Crop, u.Name)
		if len(faults) > 0 || p.get(now) != value || p.get(u) == value {
			t.Errorf("%s: got %g from %g, want %g; %v", p.Name, p.get(now), p.get(u), value, faults)
		}
		if f := now.Fact(p.Name); f.Mark != markOwn || f.Value != value || f.Unit != p.Unit || f.Source != "my diary" {
			t.Errorf("%s: provenance %+v", p.Name, f)
		}
		for _, bad := range []Override{
			{Value: strconv.FormatFloat(p.Max*1.1+1, 'f', -1, 64), Unit: p.Unit},
			{Value: strconv.FormatFloat(p.Min-1, 'f', -1, 64), Unit: p.Unit},
			{Value: o.Value, Unit: "furlong"},
			{Value: "", Unit: p.Unit},
		} {
			bad.ID, bad.Crop, bad.Use, bad.Parameter = o.ID, o.Crop, o.Use, o.Parameter
			same, faults := book.With([]Override{bad})
			if len(faults) != 1 || p.get(use(t, same, u.Crop, u.Name)) != p.get(u) {
				t.Errorf("%s as %q %q: %v", p.Name, bad.Value, bad.Unit, faults)
			}
		}
	}
}

// useWith returns a use that has the parameter.
func useWith(t *testing.T, book *Book, parameter string) *Use {
	t.Helper()
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if u.Fact(parameter) != (Fact{}) {
				return u
			}
		}
	}
	t.Fatalf("no use of the book has %s", parameter)
	return nil
}

// nudged returns a value a little above or below the use's that does not
// contradict its other numbers.
func nudged(t *testing.T, book *Book, u *Use, p *Parameter, o Override) (float64, bool) {
	t.Helper()
	step := (p.Max - p.Min) / 1000
	for _, value := range []float64{p.get(u) + step, p.get(u) - step} {
		o.Value = strconv.FormatFloat(value, 'f', -1, 64)
		if _, faults := book.With([]Override{o}); len(faults) == 0 {
			return value, true
		}
	}
	return 0, false
}

// The numbers told of the grower's own are not counted as the book's.
func TestOverriddenNumbersAreCountedAsTheGrowers(t *testing.T) {
	book := load(t)
	changed, faults := book.With([]Override{{ID: "own1", Crop: "carrot", Use: "table", Parameter: "days_factor", Value: "0.8", Unit: "1", Source: "my diary"}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for i, tally := range Provenance(changed) {
		before := Provenance(book)[i]
		if tally.Crop == "carrot" && (tally.Marks[markOwn] != 1 || tally.Own() != before.Own()+1) {
			t.Errorf("carrot after one number of the grower's: %+v, before %+v", tally, before)
		}
		if tally.Crop != "carrot" && tally.Own() != before.Own() {
			t.Errorf("%s has changed", tally.Crop)
		}
	}
}
