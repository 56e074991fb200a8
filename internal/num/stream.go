package num

import "math"

// Stream is a repeatable source of random numbers (SplitMix64: Steele, Lea &
// Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA).
// Streams with different keys are independent for our purposes, so that an edit
// in one place reshuffles nothing in another.
type Stream struct{ state uint64 }

// NewStream returns the stream of a key, for example (seed, future, site, year).
func NewStream(keys ...uint64) *Stream {
	s := Keyed(keys...)
	return &s
}

// Keyed returns the stream of a key by value, for hot loops.
func Keyed(keys ...uint64) Stream {
	state := uint64(0x9e3779b97f4a7c15)
	for _, k := range keys {
		state = mix(state ^ mix(k+0x9e3779b97f4a7c15))
	}
	return Stream{state}
}

// Key turns a name, such as a planting's id, into a key (FNV-1a, 64 bit).
func Key(name string) uint64 {
	h := uint64(14695981039346656037)
	for i := 0; i < len(name); i++ {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	return h
}

func mix(z uint64) uint64 {
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9
	z = (z ^ (z >> 27)) * 0x94d049bb133111eb
	return z ^ (z >> 31)
}

// Uint64 returns the next 64 random bits.
func (s *Stream) Uint64() uint64 {
	s.state += 0x9e3779b97f4a7c15
	return mix(s.state)
}

// Float64 returns a number in [0, 1).
func (s *Stream) Float64() float64 { return float64(s.Uint64()>>11) / (1 << 53) }

// IntN returns a whole number in [0, n), n > 0.
func (s *Stream) IntN(n int) int { return int(s.Float64() * float64(n)) }

// Normal returns a draw from the standard normal distribution (Box & Muller
// 1958, one of the pair; the other is not kept, so that a draw is a function of
// the state alone).
func (s *Stream) Normal() float64 {
	u := 1 - s.Float64()
	v := s.Float64()
	return math.Sqrt(-2*math.Log(u)) * math.Cos(2*math.Pi*v)
}

// Gamma returns a draw from the gamma distribution with the given shape (> 0)
// and scale (Marsaglia & Tsang 2000, "A simple method for generating gamma
// variables", ACM TOMS 26(3); shapes under 1 by their boost u^(1/shape)).
func (s *Stream) Gamma(shape, scale float64) float64 {
	boost := 1.0
	if shape < 1 {
		boost = math.Pow(1-s.Float64(), 1/shape)
		shape++
	}
	d := shape - 1.0/3
	c := 1 / math.Sqrt(9*d)
	for {
		x := s.Normal()
		v := 1 + c*x
		if v <= 0 {
			continue
		}
		v = v * v * v
		u := 1 - s.Float64()
		if math.Log(u) < 0.5*x*x+d-d*v+d*math.Log(v) {
			return d * v * scale * boost
		}
	}
}
