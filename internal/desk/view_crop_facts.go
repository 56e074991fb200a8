package desk

import (
	"garner/internal/crop"
	"garner/internal/holding"
)

// FactGroup is a group of the numbers of a use that belong together.
type FactGroup struct {
	Name  string
	Facts []CropFact
}

// CropFact is one number of a use with where it comes from.
type CropFact struct {
	Parameter string
	Value     float64
	Unit      string
	Source    FactSource
	Sure      string    // seen, memory, fitted, judgement, borrowed; own for the grower's
	Own       string    // id of the grower's own number that stands in place of the book's
	Book      *CropFact // with an own number: the book's
}

// FactSource is where a number comes from.
type FactSource struct {
	Text, URL   string // the work; empty where there is none
	Where, Note string // in the work, and on the number
}

// groupsOfFacts are the parameters of the book in the groups in which they are told.
var groupsOfFacts = []struct {
	name       string
	parameters []string
}{
	{"starting", []string{"soil_minimum_c", "emerge_base_c", "emerge_optimum_c", "emerge_ceiling_c", "emerge_thermal_cd", "emerge_limit_days"}},
	{"spacing", []string{"in_row_m", "between_row_m", "sow_depth_m", "sow_per_m", "set_g", "seeds_per_gram", "seed_life_years", "rotation_years"}},
	{"raising", []string{"raise_days", "raise_c", "cell_ml"}},
	{"yield", []string{"table_g", "piece_g", "usable_g", "yield_kg_m2", "yield_low_kg_m2", "yield_high_kg_m2", "fair_share", "yield_scale", "stand_loss", "weight_spread"}},
	{"time", []string{"days_seed", "days_plant", "days_set", "days_factor", "slow_factor", "ready_stage", "gate_stage", "gate_long_h", "gate_short_h",
		"gate_chill_d", "start_after_solstice_d", "due_after_solstice_d", "date_spread_d"}},
	{"harvest", []string{"stand_days", "pick_days", "flush_days", "cut_days", "cuts", "hold_days", "leaf_share", "lift_at_end", "season_thermal_cd",
		"season_days", "close_after_solstice_d", "renew_years", "age_yield_0", "age_yield_1", "age_yield_2", "age_yield_3", "age_yield_4", "age_yield_5"}},
	{"warmth", []string{"base_c", "optimum_c", "ceiling_c"}},
	{"cold", []string{"kill_young_c", "kill_c", "kill_hardened_c", "heat_start_c", "heat_end_c", "keep_days"}},
	{"bolting", []string{"chill_low_c", "chill_high_c", "bolt_chill_d", "bolt_juvenile", "bolt_long_h", "bolt_thermal_cd"}},
	{"light", []string{"height_m", "root_depth_m", "crop_coefficient", "radiation_use", "extinction", "leaf_start_cm2", "leaf_plant_cm2", "leaf_growth",
		"leaf_per_gram", "leaf_max", "organ_start", "organ_share", "dry_matter"}},
	{"food", []string{"edible_share", "portion_g", "store_humidity"}},
}

// factGroups tells all numbers that a use has: own is the book with the
// household's numbers, plain the book as it is printed.
func factGroups(plain, own *crop.Book, h *holding.Holding, u *crop.Use) []FactGroup {
	printed := u
	if _, p, err := useOf(plain, u.Crop, u.Name); err == nil {
		printed = p
	}
	known := map[string]bool{}
	for _, o := range h.Overrides {
		known[o.ID] = true
	}
	var out []FactGroup
	for _, g := range groupsOfFacts {
		group := FactGroup{Name: g.name}
		for _, name := range g.parameters {
			f := u.Fact(name)
			if f.Unit == "" {
				continue
			}
			fact := cropFact(own, name, f)
			if known[f.Note] && f.Mark == "own" {
				book := cropFact(plain, name, printed.Fact(name))
				fact.Own, fact.Book = f.Note, &book
			}
			group.Facts = append(group.Facts, fact)
		}
		if len(group.Facts) > 0 {
			out = append(out, group)
		}
	}
	return out
}

func cropFact(b *crop.Book, parameter string, f crop.Fact) CropFact {
	c := CropFact{Parameter: parameter, Value: f.Value, Unit: f.Unit, Sure: f.Mark, Source: citedOf(b, f.Source, f.Where, f.Note)}
	if f.Mark == "own" {
		c.Source = FactSource{Text: f.Source} // its note is the id of the grower's number
	}
	return c
}

// citedOf is a work as it is cited, the key where the book has no such work. A
// place that says no more than the mark is left out.
func citedOf(b *crop.Book, key, where, note string) FactSource {
	s := FactSource{Text: key, Where: where, Note: note}
	switch work, ok := b.Source(key); {
	case key == judgement:
		s.Text = "" // no work: the mark says so
	case ok:
		s.Text, s.URL = work.Citation, work.URL
	}
	if where == judgement || where == "-" {
		s.Where = ""
	}
	return s
}

// judgement is the source of numbers without one.
const judgement = "judgement"
