package draw

import "garner/internal/desk"

// reach is the share of futures in which a step's food reaches a share of the
// want, 0-1: a straight line between the middles of the ten threads, level
// beyond the lowest and the highest.
func reach(levels *[desk.Threads][]float32, step int, share float64) float64 {
	at := share*desk.Threads - 0.5
	if at <= 0 {
		return float64(levels[0][step])
	}
	j := int(at)
	if j >= desk.Threads-1 {
		return float64(levels[desk.Threads-1][step])
	}
	low, high := float64(levels[j][step]), float64(levels[j+1][step])
	return low + (at-float64(j))*(high-low)
}

// heightAt is the share of the want that a step's food reaches in a share p of
// the futures, 0-1: the reverse of reach.
func heightAt(levels *[desk.Threads][]float32, step int, p float64) float64 {
	n := 0
	for n < desk.Threads && float64(levels[n][step]) >= p-1e-6 {
		n++
	}
	switch {
	case n == 0:
		return 0
	case n == desk.Threads:
		return 1
	}
	high, low := float64(levels[n-1][step]), float64(levels[n][step])
	return (float64(n) - 0.5 + (high-p)/(high-low)) / desk.Threads
}

// meanOfWeek is the mean of a course over the steps of a step's week.
func meanOfWeek(n, step int, at func(step int) float64) float64 {
	first := step
	for first > 0 && weekOf(first-1) == weekOf(step) {
		first--
	}
	sum, steps := 0.0, 0
	for i := first; i < n && weekOf(i) == weekOf(step); i++ {
		sum, steps = sum+at(i), steps+1
	}
	return sum / float64(steps)
}
