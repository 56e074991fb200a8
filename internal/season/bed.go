package season

import (
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

	// Watch is shown every planting at the close of every day; nil: nobody looks.
	Watch func(planting, day int, s *growth.Plants)
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
	r.pair()
	var soilWater water.Kept
	for day := first; day < end; day++ {
		allowed := soilWater.Rates()
		r.lose(day, sky)
		for i := range r.stands {
			if s := &r.stands[i]; s.active(day) {
				s.Rates(s.from.Parameters, &b.Air[day], s.lightFor(&b.Air[day]), allowed)
			}
		}
		soilWater.Integrate()
		for i := range r.stands {
			if s := &r.stands[i]; s.active(day) {
				s.Integrate(s.from.Parameters)
				s.close(day, sky, b)
				if r.Watch != nil {
					r.Watch(i, day, &s.Plants)
				}
			}
		}
	}
	return r.outcomes()
}

func (s *stand) active(day int) bool { return s.start >= 0 && day >= s.start && s.Living() }

// lightFor returns the radiation at the top of a planting's canopy [MJ/m2]: the
// bed's own, less what a taller neighbour on the same ground has caught
// (two-layer Beer-Lambert; Spitters & Aerts 1983, Simulation of competition for
// light and water in crop-weed associations, Aspects of Applied Biology 4).
func (s *stand) lightFor(a *growth.Air) float64 {
	other := s.neighbour
	if other == nil || !other.Living() || other.HeightM(other.from.Parameters) <= s.HeightM(s.from.Parameters) {
		return a.PARMJ
	}
	u := other.from.Parameters.Use
	return a.PARMJ * (1 - s.beneath*other.left*growth.Intercepted(u.Extinction, other.Leaf))
}

// pair lets two plantings that share ground know each other, with the share of
// each one's ground on which they meet. A planting has one such neighbour.
func (r *Runner) pair() {
	for i := range r.stands {
		s := &r.stands[i]
		if s.from.Shares < 0 {
			continue
		}
		o := &r.stands[s.from.Shares]
		s.neighbour, s.beneath = o, s.from.Beneath
		o.neighbour, o.beneath = s, s.from.Beneath*min(1, s.from.AreaM2/o.from.AreaM2)
	}
}

func (r *Runner) outcomes() []Outcome {
	out := make([]Outcome, len(r.stands))
	for i := range r.stands {
		out[i] = r.stands[i].outcome()
	}
	return out
}
