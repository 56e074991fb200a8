package shade

import "math"

// sight is an obstacle as a point on the ground sees it, with what tells at
// once that a ray passes it by.
type sight struct {
	*obstacle
	px, py  float64 // the point in the obstacle's own axes
	x, y    float64 // unit vector to the middle of what it hides of the horizon
	cosHalf float64 // cosine of half the width it hides; -1: all round
	most    float64 // tangent of the greatest height it hides
}

// leastTan is the height above the horizon, as a tangent, under which an obstacle
// is left out: a quarter of a degree hides a fiftieth of a thousandth of the sky
// and of the beam the first and last minutes of the day.
const leastTan = 0.0045

// look returns the obstacle as seen from a point; false when it is too low to
// count.
func (o *obstacle) look(x, y float64) (sight, bool) {
	s := sight{obstacle: o, cosHalf: -1, most: math.Inf(1)}
	s.px, s.py = o.own(x-o.x, y-o.y)
	gapX, gapY := max(0, math.Abs(s.px)-o.halfL), max(0, math.Abs(s.py)-o.halfW)
	gap := math.Hypot(gapX, gapY)
	if gap == 0 {
		return s, true
	}
	s.most = o.top / gap
	if s.most < leastTan {
		return s, false
	}
	s.aim()
	return s, true
}

// aim works out the part of the horizon that an obstacle hides, from the corners
// of the rectangle it stands in.
func (s *sight) aim() {
	o := s.obstacle
	toward := math.Atan2(-s.py, -s.px)
	low, high := 0.0, 0.0
	for _, c := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		off := math.Atan2(c[1]*o.halfW-s.py, c[0]*o.halfL-s.px) - toward
		if off > math.Pi {
			off -= 2 * math.Pi
		} else if off < -math.Pi {
			off += 2 * math.Pi
		}
		low, high = min(low, off), max(high, off)
	}
	sin, cos := math.Sincos(toward + (low+high)/2)
	s.x, s.y = cos*o.cos-sin*o.sin, cos*o.sin+sin*o.cos
	s.cosHalf = math.Cos((high-low)/2) - 1e-12
}

// misses tells at once that a ray passes the obstacle by.
func (s *sight) misses(r ray) bool {
	return r.tan >= s.most || r.x*s.x+r.y*s.y < s.cosHalf
}

// crossed returns how many times the way that the obstacle's through share is
// told for a ray goes through it: 0 where it passes by, 1 for a box.
func (s *sight) crossed(r ray) float64 {
	if s.crown {
		return s.chord(s.px, s.py, r)
	}
	if d, hit := s.distance(s.px, s.py, r); hit && d*r.tan < s.top {
		return 1
	}
	return 0
}
