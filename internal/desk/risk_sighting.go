package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/risk"
	"garner/internal/words"
)

// Sighting says what was seen of a disease or pest, and where.
type Sighting struct {
	Problem  string // of those the rules are about
	On       cal.Date
	Planting string // or a bed
	Bed      string
	Stage    record.Stage // empty: not told
	Share    float64      // of the plants, 0-1; 0: not told
	Count    float64      // insects seen or caught; 0: not told
	Note     string
}

// TellSighting records a disease or pest that was seen. It is one entry.
func (o *Office) TellSighting(by Author, s Sighting) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w := lossWork{office: o, taken: map[string]map[string]bool{}}
		var err error
		if w.holding, err = o.Holding(); err != nil {
			return journal.Entry{}, err
		}
		if w.today, err = today(w.holding); err != nil {
			return journal.Entry{}, err
		}
		if w.names, err = o.naming(); err != nil {
			return journal.Entry{}, err
		}
		if faults := w.sightingFaults(&s); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		cells := map[string]string{"date": s.On.String(), "what": string(record.Sighted), "planting": s.Planting, "bed": s.Bed,
			"problem": s.Problem, "stage": string(s.Stage), "note": s.Note}
		switch {
		case s.Share > 0:
			cells["value"], cells["unit"] = numberCell(s.Share), record.ShareUnit
		case s.Count > 0:
			cells["value"], cells["unit"] = numberCell(s.Count), "pieces"
		}
		if err := w.add("records", cells); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(words.P("desk.edit_sighting", words.Args{"what": risk.ProblemName(s.Problem), "bed": w.names.name("beds", s.Bed), "date": s.On}))
	})
}

// mostCounted is the most insects that are told at once.
const mostCounted = 100000

// sightingFaults finds everything that cannot be of a sighting, and takes the bed of
// its planting.
func (w *lossWork) sightingFaults(s *Sighting) (faults fault.List) {
	tell := func(field, key string, args words.Args) { faults = append(faults, w.wrong(field, key, args)) }
	if !risk.Known(s.Problem) {
		tell("problem", "desk.sighting_problem", nil)
	}
	switch {
	case !s.On.IsSet():
		tell("date", "desk.lost_no_day", nil)
	case s.On > w.today:
		tell("date", "desk.sighting_to_come", words.Args{"today": w.today})
	}
	if s.Planting != "" {
		plantings, _ := plan.Resolve(w.holding.Plans, w.holding.Plantings, w.holding.Changes, w.holding.Plan)
		at := slices.IndexFunc(plantings, func(p plan.Planting) bool { return p.ID == s.Planting })
		if at < 0 {
			tell("where", "desk.sighting_where", nil)
		} else {
			s.Bed = plantings[at].Bed
		}
	} else if !slices.ContainsFunc(w.holding.Beds, func(b place.Bed) bool { return b.ID == s.Bed }) {
		tell("where", "desk.sighting_where", nil)
	}
	if !(s.Share >= 0 && s.Share <= 1) {
		tell("share", "desk.sighting_share", nil)
	}
	if !(s.Count >= 0 && s.Count <= mostCounted) {
		tell("count", "desk.sighting_count", words.Args{"most": mostCounted})
	}
	if s.Share > 0 && s.Count > 0 {
		tell("count", "desk.sighting_either", nil)
	}
	return faults
}

// SightingChoices are what a form of a sighting offers.
type SightingChoices struct {
	Today    cal.Date
	Problems []SightingProblem
	Places   []SightingPlace // plantings that stand and beds, along the route
}

// SightingProblem is a disease or pest that can be told.
type SightingProblem struct {
	ID   string
	Name words.Phrase
	Pest bool
}

// SightingPlace is a bed, or a planting in it.
type SightingPlace struct {
	Planting string // empty: the bed itself
	Bed      string
	Name     string // of the planting
	BedName  string
}

// SightingChoices lists what can be seen and where.
func (o *Office) SightingChoices() (*SightingChoices, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	w, err := riskWorkOf(a, nil)
	if err != nil {
		return nil, err
	}
	out := &SightingChoices{Today: w.today}
	for _, rules := range w.problems() {
		out.Problems = append(out.Problems, SightingProblem{rules[0].Problem, risk.ProblemName(rules[0].Problem), rules[0].Pest()})
	}
	beds := slices.Clone(a.holding.Beds)
	slices.SortStableFunc(beds, func(a, b place.Bed) int { return a.Order - b.Order })
	for _, b := range beds {
		for i := range w.plantings {
			p := &w.plantings[i]
			end := w.ends(p.ID)
			if p.Bed == b.ID && p.Date <= w.today && !w.gone[p.ID] && (!end.IsSet() || end+aMonth > w.today) && !(p.ClearBy.IsSet() && p.ClearBy+aMonth < w.today) {
				out.Places = append(out.Places, SightingPlace{p.ID, b.ID, w.n.use(p.Crop, p.Use), w.n.bed(b.ID)})
			}
		}
		out.Places = append(out.Places, SightingPlace{Bed: b.ID, BedName: w.n.bed(b.ID)})
	}
	return out, nil
}

// aMonth is how long after its end a planting is still offered [d].
const aMonth = 30
