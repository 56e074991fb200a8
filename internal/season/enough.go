package season

// enough tells whether the run may stop before a day. Up to Enough it is then that of a
// longer one bit for bit, and so are the outcomes of all that began before that day,
// save how long a perennial goes on from there.
func (r *Runner) enough(day int) bool {
	if r.Enough == 0 || day < r.Enough {
		return false
	}
	for i := range r.stands {
		if s := &r.stands[i]; s.start >= 0 && s.start < r.Enough && s.Living() && !s.told(r.Enough) {
			return false
		}
	}
	return true
}

// told tells whether a living planting has no more to tell of the days before one: what
// stands or hangs until then is known, and that it goes on. Of one that ends within the
// year that is known at its end only.
func (s *stand) told(before int) bool {
	if !s.params.Perennial() || s.ready < 0 {
		return false
	}
	n := len(s.flow)
	return n > 0 && s.flow[n-1] > 0 && s.out.First+n > before
}
