package soilcare

import (
	"garner/internal/cal"
	"garner/internal/record"
	"garner/internal/words"
)

// brassicas is the family that wants lime.
const brassicas = "Brassicaceae"

// aYear is how far ahead the crops of a bed are looked at for lime [d].
const aYear = 400

// lime tells that a bed should be limed in the autumn or winter before
// brassicas, and what speaks against it.
func (c *Care) lime(f *facts, g *Ground, given []Given, ahead []coming) {
	limed := last(given, record.Limed)
	c.scab(f, g, limed, ahead)
	at := -1 // the first brassicas that can still be limed for
	for i := range ahead {
		if ahead[i].crop.Family != brassicas || ahead[i].date > g.Today+aYear {
			continue
		}
		if _, until := g.limeSeason(ahead[i].date); until >= g.Today {
			at = i
			break
		}
	}
	if g.soilless() || at < 0 || limed != nil && limed.Date > g.Today-cal.Date(f.value("lime_again")*365) {
		return
	}
	wants := words.Args{"crop": ahead[at].crop.Plural, "ph": f.value("brassica_ph")}
	from, until := g.limeSeason(ahead[at].date)
	switch {
	case g.Bed.PH == 0:
		c.Cautions = append(c.Cautions, words.P("soilcare.ph_unknown", wants))
	case g.Bed.PH >= f.value("brassica_ph"):
	case f.potatoesAfter(max(from, g.Today), ahead):
		c.Cautions = append(c.Cautions, words.P("soilcare.lime_potatoes_first", wants))
	default:
		grams, source := f.limeRate(g.Bed.Texture)
		kg := grams * g.Bed.AreaM2() / 1000
		args := words.Args{"crop": ahead[at].crop.Plural, "ph": g.Bed.PH, "from": from, "until": until, "grams": grams, "kg": kg}
		key := "soilcare.lime_due"
		if source == "" {
			key = "soilcare.lime_due_test"
		}
		c.Due = append(c.Due, Due{What: record.Limed, Until: until, Kg: kg, Phrase: words.P(key, args)})
	}
}

// limeSeason is the autumn and winter before a day: October to February in the
// north, April to August in the south. Source: rhs-lime (winter, before digging).
func (g *Ground) limeSeason(before cal.Date) (from, until cal.Date) {
	month, last := 10, 2
	if g.South {
		month, last = 4, 8
	}
	year := before.Year()
	from = cal.Of(year, month, 1)
	if from >= before {
		from = cal.Of(year-1, month, 1)
	}
	endYear := from.Year()
	if last < month {
		endYear++
	}
	return from, min(before-30, cal.Of(endYear, last+1, 1)-1)
}

// limeRate is ground limestone for a texture [g/m2], and the source; a soil of
// peat or one not known has none.
func (f *facts) limeRate(texture string) (float64, string) {
	name := ""
	switch texture {
	case "sand", "loamy sand", "sandy loam":
		name = "lime_light"
	case "loam", "silt loam":
		name = "lime_medium"
	case "clay loam", "clay":
		name = "lime_heavy"
	}
	return f.value(name), f.numbers[name].Source
}

// potatoesAfter tells whether potatoes come within a year of liming on a day.
func (f *facts) potatoesAfter(limed cal.Date, ahead []coming) bool {
	for _, a := range ahead {
		if f.traits[a.crop.ID] == scabs && a.date >= limed && a.date <= limed+f.days("lime_potatoes") {
			return true
		}
	}
	return false
}

// scab warns of potatoes soon after lime.
func (c *Care) scab(f *facts, g *Ground, limed *Given, ahead []coming) {
	if limed == nil {
		return
	}
	for _, a := range ahead {
		if f.traits[a.crop.ID] == scabs && a.date <= limed.Date+f.days("lime_potatoes") {
			c.Cautions = append(c.Cautions, words.P("soilcare.scab", words.Args{"crop": a.crop.Plural, "limed": limed.Date, "day": a.date}))
			return
		}
	}
}
