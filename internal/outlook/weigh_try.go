package outlook

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/words"
)

// aroundSowing is the half-width of the days round a sowing over which its soil
// is taken [d], as for planting windows.
const aroundSowing = 5

// Tried is how a planting of one bed would fare, each alone, under the first of
// the table's futures. The table is not touched.
type Tried struct {
	Fate
	SoilC []float64 // mean soil in the ten days round its date [C], by future
}

// Try steps plantings of one bed alone, each as though nothing else stood there,
// through the first futures of the table. Those that cannot reach the table have
// no years.
func (s *Scales) Try(bed string, plantings []plan.Planting, futures int) ([]Tried, error) {
	return s.try(s.job, bed, plantings, futures, false)
}

// TryFair is Try with the mean luck of its use for every planting, so that what is
// left between plantings of a crop is their place, their time and the weather. The
// soil of the bed is followed from a quarter before the table on, whichever plantings
// are asked for.
func (s *Scales) TryFair(bed string, plantings []plan.Planting, futures int) ([]Tried, error) {
	return s.try(s.job, bed, plantings, futures, true)
}

// TryUnder is TryFair with covers laid over the bed beside those that lie there.
func (s *Scales) TryUnder(bed string, covers []place.CoverSpell, plantings []plan.Planting, futures int) ([]Tried, error) {
	own := *s.job
	own.Holding = (&Edit{Covers: covers}).told(s.job.Holding)
	return s.try(&own, bed, plantings, futures, true)
}

// try steps plantings of a bed as a job lays it.
func (s *Scales) try(own *job, bed string, plantings []plan.Planting, futures int, fair bool) ([]Tried, error) {
	s.memory.mu.Lock()
	defer s.memory.mu.Unlock()
	at := slices.IndexFunc(s.job.Holding.Beds, func(b place.Bed) bool { return b.ID == bed })
	if at < 0 {
		return nil, fault.New(fault.NotFound, "outlook.bed_unknown", words.Args{"planting": "", "bed": bed})
	}
	out := make([]Tried, len(plantings))
	w := newWeighing(s)
	parts := make([]*bedWork, len(plantings))
	from := s.job.end()
	if fair {
		from = s.job.From - quarter
	}
	for i := range plantings {
		made, err := own.layBed(s.job.Holding.Beds[at], []plan.Planting{plantings[i]})
		if err != nil {
			return nil, err
		}
		out[i].Fate = Fate{Planting: plantings[i].ID, Bed: bed, Crop: plantings[i].Crop, Use: plantings[i].Use, First: s.job.first()}
		if len(made.plantings) > 0 {
			parts[i], from = made, min(from, made.from)
		}
	}
	for _, p := range parts {
		if p == nil {
			continue
		}
		p.from, p.fair = from, fair // all on one ground, built once
		p.name(s.job)
		p.result = &bedResult{years: make([][]season.Outcome, s.job.Years)}
		w.parts = append(w.parts, p)
	}
	soils, err := w.runTried(min(futures, s.job.Years))
	if err != nil {
		return nil, err
	}
	n := 0
	for i, p := range parts {
		if p == nil {
			continue
		}
		for f := range soils {
			out[i].Years = append(out[i].Years, &p.result.years[f][0])
			out[i].SoilC = append(out[i].SoilC, soils[f][n])
		}
		n++
	}
	return out, nil
}

// runTried steps the parts through the first futures and returns the soil round
// each part's date, by future.
func (w *weighing) runTried(futures int) ([][]float64, error) {
	soils := make([][]float64, futures)
	err := w.share(futures, func(k *weigher, f int) error {
		clear(k.built)
		for _, p := range w.parts {
			if err := k.bed(p, f); err != nil {
				return err
			}
			beside := k.bedsides[p.ground]
			day := int(p.bed.Plantings[0].Date - w.job.first())
			lo, hi := max(p.start, day-aroundSowing), min(len(beside.Air), day+aroundSowing)
			soils[f] = append(soils[f], beside.MeanSoilC(min(lo, hi-1), hi))
		}
		return nil
	})
	return soils, err
}

// ShortKg is a vegetable's shortage by day under one future [kg], from the table's
// first day on; nil when the table does not know it.
func (t *Table) ShortKg(vegetable string, future int) []float32 {
	for i := range t.Vegetables {
		if t.Vegetables[i].Name == vegetable {
			return t.Vegetables[i].Years[future].Short
		}
	}
	return nil
}

// End is the day after the table.
func (t *Table) End() cal.Date { return t.From + cal.Date(7*t.Weeks) }
