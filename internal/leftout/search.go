package leftout

import (
	"math"

	"garner/internal/crop"
	"garner/internal/num"
	"garner/internal/printed"
)

// search moves one number after the other.
type search struct {
	exam    *printed.Exam
	in      func(*printed.Date) bool
	free    []Free
	workers int

	book   *crop.Book // with the values that stand
	values []float64
	best   float64
}

// ladder holds, for each round, the steps that are tried either way from where
// a number stands, in its spreads: far first, since the ends of windows jump.
var ladder = [][]float64{{1.5, 0.5}, {1, 0.4}, {0.3}}

// mostMoves is how often one number may move in a round.
const mostMoves = 2

// Fit fits the free numbers to the dates that a condition lets through and
// returns their values.
func Fit(exam *printed.Exam, book *crop.Book, free []Free, in func(*printed.Date) bool, workers int) []float64 {
	s := &search{exam: exam, in: in, free: free, workers: workers, values: priors(free)}
	s.book = book.WithDefaults(defaults(free, s.values))
	s.best = s.cost(s.book, s.values)
	for _, steps := range ladder {
		for i := range free {
			for range mostMoves {
				if !s.move(i, steps) {
					break
				}
			}
		}
	}
	return s.values
}

// move puts one number where it costs least, and tells whether it moved.
func (s *search) move(i int, steps []float64) bool {
	best, book, value := s.best, s.book, s.values[i]
	for _, step := range steps {
		for _, way := range []float64{step, -step} {
			f := s.free[i]
			trial := append([]float64(nil), s.values...)
			trial[i] = num.Clamp(math.Round((trial[i]+way*f.Spread)*fineness)/fineness, f.Min, f.Max)
			changed := s.book.WithDefaults(defaults(s.free[i:i+1], trial[i:i+1]))
			if c := s.cost(changed, trial); c < best-leastGain {
				best, book, value = c, changed, trial[i]
			}
		}
	}
	moved := value != s.values[i]
	s.best, s.book, s.values[i] = best, book, value
	s.exam.Keep(book)
	return moved
}

// fineness is how finely a number is told: to a ten-thousandth.
const fineness = 1e4

// leastGain keeps rounding from moving a number.
const leastGain = 1e-9

func (s *search) cost(book *crop.Book, values []float64) float64 {
	return misfit(s.exam.Rows(book, s.workers, s.in)) + pull(s.free, values)
}
