package season

import (
	"garner/internal/cal"
	"garner/internal/growth"
	"garner/internal/water"
)

// Bed is one bed with all plantings it holds over the span.
type Bed struct {
	Ground    Ground
	Plantings []Planting
}

// Runner steps beds through futures. It keeps its working space, so a worker
// owns one and uses it again and again.
type Runner struct {
	stands []stand
	alone  Planting // the one that is run alone
	ground shared

	// Elsewhere is the own weather of other beds, in which plantings stood before
	// they were set in this one, over the sky's span.
	Elsewhere []*Bedside

	// Enough is the day index from which the run may stop, once all that began before
	// it has come to its end; 0: it runs as long as the weather does.
	Enough int

	// Watch is shown every planting at the close of every day, with what its
	// leaves got of the bed's light; nil: nobody looks.
	Watch func(planting, day int, s *growth.Plants, l Light)
}

// Run steps all plantings of a bed together through the days of one future.
// draws holds one draw for each planting; the outcomes come in the same order.
func (r *Runner) Run(sky *Sky, b *Bedside, bed *Bed, draws []growth.Draw) []Outcome {
	r.stands = resize(r.stands, len(bed.Plantings))
	first, end := len(sky.DayLengthH), len(b.Air)
	for i := range bed.Plantings {
		r.stands[i].begin(&bed.Plantings[i], sky, draws[i])
		if s := r.stands[i].start; s >= 0 {
			first = min(first, s)
		}
	}
	r.ground.begin(bed.Plantings)
	var soilWater water.Kept
	for day := first; day < end && !r.enough(day); day++ {
		allowed := soilWater.Rates()
		r.lose(day, sky)
		if r.ground.tied {
			r.ground.light(r.stands, day)
		}
		for i := range r.stands {
			if s := &r.stands[i]; s.active(day) {
				s.work(day, sky)
				s.rates(&r.beside(s, b).Air[day], allowed)
			}
		}
		soilWater.Integrate()
		for i := range r.stands {
			if s := &r.stands[i]; s.active(day) {
				s.Integrate(s.params)
				s.close(day, sky, r.beside(s, b))
				if r.Watch != nil {
					r.Watch(i, day, &s.Plants, s.got())
				}
			}
		}
	}
	return r.outcomes()
}

func (s *stand) active(day int) bool { return s.start >= 0 && day >= s.start && s.Living() }

func (s *stand) rates(a *growth.Air, allowed float64) {
	if s.shared {
		s.RatesAmong(s.params, a, s.light, allowed)
		return
	}
	s.Rates(s.params, a, a.PARMJ, allowed)
}

// work does to a planting what is done to it on a day, before it grows.
func (s *stand) work(day int, sky *Sky) {
	for s.elsewhere() && sky.First+cal.Date(day) >= s.from.Stays[s.stay].Until {
		s.set(day)
	}
	for _, strip := range s.from.Strips {
		if strip.On == sky.First+cal.Date(day) {
			s.TakeLowerLeaves(strip.Share)
		}
	}
}

// set lifts a planting and sets it where it stands next.
func (s *stand) set(day int) {
	before := s.params
	s.stay++
	s.params = s.from.Parameters
	if s.elsewhere() {
		s.params = s.from.Stays[s.stay].Parameters
	}
	if day > s.start {
		s.Lift(before, s.params)
	}
}

// elsewhere tells whether the planting still stands in another bed.
func (s *stand) elsewhere() bool { return s.stay < len(s.from.Stays) }

// beside is the weather of the bed a planting stands in.
func (r *Runner) beside(s *stand, b *Bedside) *Bedside {
	if s.elsewhere() {
		return r.Elsewhere[s.from.Stays[s.stay].Elsewhere]
	}
	return b
}

func (r *Runner) outcomes() []Outcome {
	out := make([]Outcome, len(r.stands))
	for i := range r.stands {
		out[i] = r.stands[i].outcome()
	}
	return out
}
