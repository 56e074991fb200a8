package season

import (
	"garner/internal/cal"
	"garner/internal/growth"
)

// Usable runs one planting alone from a date until it is known whether it gives
// a usable crop: ready in its time, not spoiled by heat, and alive for the days
// past ready that its use asks for. It returns the day it was ready.
func (r *Runner) Usable(sky *Sky, b *Bedside, p *Planting, date cal.Date, d growth.Draw) (ready int, ok bool) {
	r.stands = resize(r.stands, 1)
	s := &r.stands[0]
	r.alone = *p
	alone := &r.alone
	alone.Date, alone.Shares = date, -1
	s.begin(alone, sky, d)
	keep := max(int(alone.Parameters.Use.KeepDays), heatAfter+1)
	for day := s.start; day < len(b.Air); day++ {
		if !s.Living() {
			return s.ready, s.ready >= 0 && s.enough()
		}
		if s.ready >= 0 && day > s.ready+keep {
			return s.ready, true
		}
		s.Rates(s.from.Parameters, &b.Air[day], b.Air[day].PARMJ, 1)
		s.Integrate(s.from.Parameters)
		s.close(day, sky, b)
	}
	return s.ready, false
}

// enough tells whether a planting that ended by itself had stood its time, or
// had lived its days past ready.
func (s *stand) enough() bool { return s.End == s.from.Parameters.GoodEnd() || s.gathered() }
