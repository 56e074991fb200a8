package shade

import "math"

// beam returns the share of a day's clear beam that reaches a point past what it
// sees, in a tenth of the year: all of it where the sun does not rise.
func beam(seen []sight, day []step, tenth int) float64 {
	got, all := 0.0, 0.0
	for i := range day {
		all += day[i].weight
		got += day[i].weight * passes(seen, day[i].ray, tenth)
	}
	if all <= 0 {
		return 1
	}
	return got / all
}

// dark is the logarithm under which nothing counts as coming through.
const dark = -18.0

// passes is the share of light along a ray that gets through all there is.
func passes(seen []sight, r ray, tenth int) float64 {
	ln := 0.0
	for i := range seen {
		s := &seen[i]
		if s.misses(r) {
			continue
		}
		if n := s.crossed(r); n > 0 {
			if ln += n * s.lnThrough[tenth]; ln < dark {
				return 0
			}
		}
	}
	if ln == 0 {
		return 1
	}
	return math.Exp(ln)
}
