package season

import "garner/internal/growth"

// Follow runs one planting alone from its date to its end or the end of the
// weather, and shows its state at the close of every day.
func (r *Runner) Follow(sky *Sky, b *Bedside, p *Planting, d growth.Draw, each func(day int, s *growth.Plants)) Outcome {
	r.stands = resize(r.stands, 1)
	s := &r.stands[0]
	r.alone = *p
	alone := &r.alone
	alone.Shares, alone.Strips, alone.Stays = -1, nil, nil
	alone.Losses = nil
	s.begin(alone, sky, d)
	for day := max(0, s.start); day < len(b.Air) && s.Living(); day++ {
		s.Rates(s.params, &b.Air[day], b.Air[day].PARMJ, 1)
		s.Integrate(s.params)
		s.close(day, sky, b)
		if each != nil {
			each(day, &s.Plants)
		}
	}
	return s.outcome()
}
