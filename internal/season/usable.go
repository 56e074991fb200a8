package season

import (
	"garner/internal/cal"
	"garner/internal/growth"
)

// Usable runs one planting alone from a date until it is known whether it gives
// a usable crop: ready in its time, not spoiled by heat, and alive for the days
// past ready that its use asks for, with a fair share of its typical yield. It
// returns the day it was ready.
func (r *Runner) Usable(sky *Sky, b *Bedside, p *Planting, date cal.Date, d growth.Draw) (ready int, ok bool) {
	r.stands = resize(r.stands, 1)
	s := &r.stands[0]
	r.alone = *p
	alone := &r.alone
	alone.Date, alone.Shares = date, -1
	alone.Strips, alone.Stays, alone.Losses = nil, nil, nil
	s.begin(alone, sky, d)
	keep := max(int(s.params.Use.KeepDays), heatAfter+1)
	fair := s.params.Use.FairShare * s.params.Use.YieldKgM2
	picked, stood := 0.0, 0.0
	due := len(b.Air)
	if last := Due(s.params.Use, sky.First+cal.Date(s.start), sky.Northern()); last.IsSet() {
		due = int(last - sky.First)
	}
	for day := s.start; day < len(b.Air); day++ {
		if !s.Living() {
			return s.ready, s.ready >= 0 && s.enough() && picked+stood >= fair
		}
		if s.ready < 0 && day > due {
			return s.ready, false
		}
		if s.ready >= 0 && day > s.ready+keep && picked+stood >= fair {
			return s.ready, true
		}
		s.Rates(s.params, &b.Air[day], b.Air[day].PARMJ, 1)
		s.Integrate(s.params)
		if s.params.Flows() {
			picked += s.YieldedKgM2(s.params)
		}
		if s.params.Stands() && s.Stage == growth.Ready {
			stood = max(stood, s.FreshKgM2(s.params))
		}
		s.close(day, sky, b)
	}
	return s.ready, false
}

// enough tells whether a planting that ended by itself had stood its time, or
// had lived its days past ready.
func (s *stand) enough() bool { return s.End == s.params.GoodEnd() || s.gathered() }
