package soilcare

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// HarvestAfter returns the days from raw manure to harvest of a crop [d]: 120
// when what is eaten touches the soil, else 90 (7 CFR 205.203).
func HarvestAfter(crop string) (int, error) {
	f, err := known()
	if err != nil {
		return 0, err
	}
	return int(f.harvestAfter(crop)), nil
}

func (f *facts) harvestAfter(crop string) cal.Date {
	if f.traits[crop] == clear {
		return f.days("manure_clear")
	}
	return f.days("manure_soil")
}

// manure tells what manure on a bed means for its crops.
func (c *Care) manure(f *facts, g *Ground, given []Given) {
	m := last(given, record.Manured)
	if m == nil {
		return
	}
	if l := last(given, record.Limed); l != nil && max(l.Date-m.Date, m.Date-l.Date) < f.days("lime_apart") {
		c.Cautions = append(c.Cautions, words.P("soilcare.lime_and_manure", words.Args{"manured": m.Date, "limed": l.Date}))
	}
	if m.Date+f.days("manure_soil") > g.Today {
		c.Cautions = append(c.Cautions, words.P("soilcare.manure_harvest", words.Args{"manured": m.Date,
			"soil": m.Date + f.days("manure_soil"), "clear": m.Date + f.days("manure_clear"),
			"soil_days": f.value("manure_soil"), "clear_days": f.value("manure_clear")}))
	}
	if roots := g.sownWithin(m.Date, f.days("manure_roots"), func(id string) bool { return f.traits[id] == forks }); len(roots) > 0 {
		c.Cautions = append(c.Cautions, words.P("soilcare.manure_forks", words.Args{"manured": m.Date, "crops": roots}))
	}
}

// sownWithin names the crops of a kind that go into the bed within days of a
// date and are not over long before today.
func (g *Ground) sownWithin(from, days cal.Date, is func(crop string) bool) []string {
	var out []string
	for _, p := range g.Plantings {
		if p.Bed != g.Bed.ID || !is(p.Crop) || p.Date < from || p.Date > from+days || over(&p, g.Today) {
			continue
		}
		if c, ok := g.Book.Crop(p.Crop); ok && !slices.Contains(out, c.Plural) {
			out = append(out, c.Plural)
		}
	}
	return out
}

func over(p *plan.Planting, today cal.Date) bool { return p.ClearBy.IsSet() && p.ClearBy <= today }

// Forks tells whether the roots of a crop fork in fresh manure.
func Forks(crop string) (bool, error) {
	f, err := known()
	if err != nil {
		return false, err
	}
	return f.traits[crop] == forks, nil
}
