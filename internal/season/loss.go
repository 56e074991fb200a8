package season

import "garner/internal/cal"

// Loss is a share of a planting that is gone from a day on, with its leaf, its
// weight and the ground it held. What is left grows on as it did: that plants
// with missing neighbours have more room is left out.
type Loss struct {
	On    cal.Date
	Share float64 // of what was there until then, 0-1
}

// Left is the share of the planting that is there on a day, 0-1.
func (p *Planting) Left(day cal.Date) float64 {
	left := 1.0
	for _, l := range p.Losses {
		if l.On <= day {
			left *= 1 - l.Share
		}
	}
	return left
}

// lose takes off what is lost by a day, before anything grows that day.
func (r *Runner) lose(day int, sky *Sky) {
	for i := range r.stands {
		s := &r.stands[i]
		for s.lost < len(s.from.Losses) && s.from.Losses[s.lost].On <= sky.First+cal.Date(day) {
			s.left *= 1 - s.from.Losses[s.lost].Share
			s.lost++
		}
	}
}

// end ends a planting of which nothing is left.
func (s *stand) end() {
	if s.left <= 0 && s.Living() {
		s.Lose()
	}
}
