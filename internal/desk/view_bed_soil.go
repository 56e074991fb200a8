package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/rotation"
	"garner/internal/soilcare"
	"garner/internal/words"
)

// BedSoil is how a bed's soil was looked after and what is due.
type BedSoil struct {
	Last     []words.Phrase // the latest of compost, manure, lime and mulch
	Due      []words.Phrase
	Cautions []words.Phrase
	Free     []BareGround
}

// BareGround is a time in which a part of the bed holds nothing, and what could
// cover it.
type BareGround struct {
	Says   words.Phrase
	Offers []words.Phrase
}

func (w *bedWork) soil() (BedSoil, error) {
	care, err := soilcare.Look(soilcare.Ground{Book: w.a.setting.Book, Bed: w.bed, South: w.south, Plantings: w.own,
		Records: w.a.holding.Records, Today: w.a.setting.Today})
	if err != nil {
		return BedSoil{}, err
	}
	var s BedSoil
	for _, g := range care.Last {
		s.Last = append(s.Last, givenWords(&g))
	}
	for _, d := range care.Due {
		s.Due = append(s.Due, d.Phrase)
	}
	s.Cautions = care.Cautions
	s.Free, err = w.free()
	return s, err
}

// givenWords says what was given, when and how much.
func givenWords(g *soilcare.Given) words.Phrase {
	what := valueName("records", "what", string(g.What))
	switch {
	case g.Litres > 0:
		return words.P("desk.soil_given_l", words.Args{"what": what, "date": g.Date, "litres": g.Litres})
	case g.Kg > 0:
		return words.P("desk.soil_given_kg", words.Args{"what": what, "date": g.Date, "kg": g.Kg})
	}
	return words.P("desk.soil_given", words.Args{"what": what, "date": g.Date})
}

const (
	freeAhead  = 400 // how far ahead free ground is looked for [d]
	freeShare  = 0.3 // share of the bed from which it is told
	freeLeast  = 21  // days from which it is told
	freeMost   = 2   // times that are told
	greensMost = 3   // green manures that are offered for one
)

// free finds the next times in which much of the bed holds nothing.
func (w *bedWork) free() ([]BareGround, error) {
	turn, err := soilcare.TurnRound(w.bed, false)
	if err != nil || w.bed.Kind == "container" || w.bed.Kind == "bench" {
		return nil, err
	}
	var out []BareGround
	for _, g := range w.gaps() {
		if len(out) == freeMost {
			break
		}
		from := max(g.from, w.a.setting.Today)
		if g.from > w.a.setting.Today {
			from += cal.Date(turn)
		}
		offers, err := soilcare.Bare(w.a.setting.Book, from, g.until, w.south)
		if err != nil {
			return nil, err
		}
		free := BareGround{Says: gapWords(&g, from)}
		greens := 0
		for _, o := range offers {
			if o.Kind == soilcare.GreenManure {
				if greens == greensMost || !w.suits(&o) {
					continue
				}
				greens++
			}
			free.Offers = append(free.Offers, o.Phrase)
		}
		if len(free.Offers) > 0 {
			out = append(out, free)
		}
	}
	return out, nil
}

func gapWords(g *gap, from cal.Date) words.Phrase {
	if !g.until.IsSet() {
		return words.P("desk.soil_free_on", words.Args{"area": g.areaM2, "from": from})
	}
	return words.P("desk.soil_free", words.Args{"area": g.areaM2, "from": from, "until": g.until})
}

// suits tells whether a green manure clashes with nothing that stood here or
// comes within two years.
func (w *bedWork) suits(o *soilcare.Offer) bool {
	if w.history.Check(w.bed.ID, rotation.Candidate{Crop: o.Crop, Date: o.Start}) != nil {
		return false
	}
	family := w.family(o.Crop)
	return !slices.ContainsFunc(w.own, func(p plan.Planting) bool {
		return p.Date > o.Start && p.Date < o.Start+730 && w.family(p.Crop) == family
	})
}

// gap is a time in which the same part of a bed holds nothing.
type gap struct {
	from, until cal.Date // until None: nothing is meant for it yet
	areaM2      float64  // the least that is free
}

// gaps are the times in which much of the bed is free, in order.
func (w *bedWork) gaps() []gap {
	var out []gap
	first := w.a.setting.Today
	open := -1
	for day := first; day < first+freeAhead; day++ {
		free := w.bed.AreaM2() - w.heldOn(day)
		switch {
		case free < freeShare*w.bed.AreaM2():
			if open >= 0 {
				out[open].until, open = day, -1
			}
		case open < 0:
			out = append(out, gap{day, cal.None, free})
			open = len(out) - 1
		default:
			out[open].areaM2 = min(out[open].areaM2, free)
		}
	}
	return slices.DeleteFunc(out, func(g gap) bool { return g.until.IsSet() && g.until-g.from < freeLeast })
}

// heldOn is the ground that plantings hold on a day [m2].
func (w *bedWork) heldOn(day cal.Date) float64 {
	held := 0.0
	for i := range w.own {
		p := &w.own[i]
		if p.Date > day || p.Relation == plan.Under || p.Relation == plan.Between || w.past(p) {
			continue
		}
		if end := w.endOf(p); end.IsSet() && end <= day {
			continue
		}
		held += p.AreaM2
	}
	return held
}

// endOf is when a planting leaves its ground: as planned, else as forecast; None
// of what stays.
func (w *bedWork) endOf(p *plan.Planting) cal.Date {
	if p.ClearBy.IsSet() || perennial(w.a.setting.Book, p) != "" {
		return p.ClearBy
	}
	return w.over(p.ID)
}
