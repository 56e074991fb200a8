package larder

import "garner/internal/cal"

// Weeks returns the number of weeks, each from Monday, that a course of days
// from first touches.
func Weeks(first cal.Date, days int) int {
	if days <= 0 {
		return 0
	}
	return (first.Weekday()+days-1)/7 + 1
}

// Weekly adds a daily course up by weeks that start on Monday [kg a week] and
// returns the sums in out, grown when it is too short. The first week is the
// one that holds first; it and the last may be cut short by the course.
func Weekly(out []float64, course []float32, first cal.Date) []float64 {
	n := Weeks(first, len(course))
	if cap(out) < n {
		out = make([]float64, n)
	}
	out = out[:n]
	clear(out)
	for week, rest := 0, 7-first.Weekday(); len(course) > 0; week, rest = week+1, 7 {
		rest = min(rest, len(course))
		sum := 0.0
		for _, kg := range course[:rest] {
			sum += float64(kg)
		}
		out[week], course = sum, course[rest:]
	}
	return out
}
