package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/rotation"
	"garner/internal/soilcare"
	"garner/internal/space"
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

// soil tells how the soil was looked after; ground is the layout of the beds, nil
// when it is not at hand.
func (w *bedWork) soil(ground *space.Ground) (BedSoil, error) {
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
	s.Free, err = w.free(ground)
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

// free finds the next times in which much of the bed holds nothing, and what
// could cover it then.
func (w *bedWork) free(ground *space.Ground) ([]BareGround, error) {
	if ground == nil || w.bed.Kind == "container" || w.bed.Kind == "bench" {
		return nil, nil
	}
	var out []BareGround
	for _, g := range w.gaps(ground) {
		offers, err := w.offers(&g)
		if err != nil {
			return nil, err
		}
		if len(offers) > 0 {
			out = append(out, BareGround{Says: gapWords(&g), Offers: offers})
		}
		if len(out) == freeMost {
			break
		}
	}
	return out, nil
}

// gaps are the times in which the same large part of the bed is free, in order.
func (w *bedWork) gaps(ground *space.Ground) []space.Gap {
	bed := ground.Bed(w.bed.ID)
	if bed == nil {
		return nil
	}
	now := w.a.setting.Today
	return slices.DeleteFunc(bed.Gaps(now, now+freeAhead), func(g space.Gap) bool {
		return g.Share < freeShare || !g.From.P50.IsSet() || !g.Open && g.Days() < freeLeast
	})
}

// offers are what could cover a gap: a few green manures that clash with nothing,
// and what needs no sowing.
func (w *bedWork) offers(g *space.Gap) ([]words.Phrase, error) {
	until := g.Until
	if g.Open {
		until = cal.None
	}
	all, err := soilcare.Bare(w.a.setting.Book, g.From.P50, until, w.south)
	if err != nil {
		return nil, err
	}
	var out []words.Phrase
	greens := 0
	for i := range all {
		o := &all[i]
		if o.Kind == soilcare.GreenManure {
			if greens == greensMost || !w.suits(o) {
				continue
			}
			greens++
		}
		out = append(out, o.Phrase)
	}
	return out, nil
}

func gapWords(g *space.Gap) words.Phrase {
	if g.Open {
		return words.P("desk.soil_free_on", words.Args{"area": g.AreaM2, "from": g.From.P50})
	}
	return words.P("desk.soil_free", words.Args{"area": g.AreaM2, "from": g.From.P50, "until": g.Until})
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
