package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
)

// Widths of a week [px]: a ribbon is drawn at the desk's and stretched by the
// stylesheet to the others.
const (
	WeekPX      = 10.75
	WideWeekPX  = 14
	PhoneWeekPX = 36
)

// Scale lays a stretch of time along a drawing's width.
type Scale struct {
	From    cal.Date
	Days    int
	WidthPX float64
}

// Weeks is a table's scale at the desk's width of a week.
func Weeks(from cal.Date, weeks int) Scale {
	return Scale{From: from, Days: 7 * weeks, WidthPX: WeekPX * float64(weeks)}
}

// X is where a day begins [px], kept inside the drawing.
func (s Scale) X(date cal.Date) float64 {
	return s.at(float64(date) - float64(s.From))
}

// at is where a number of days after the first lies [px].
func (s Scale) at(days float64) float64 {
	if s.Days <= 0 {
		return 0
	}
	return math.Max(0, math.Min(1, days/float64(s.Days))) * s.WidthPX
}

// steps returns where the steps of a ribbon begin, and the end of the last
// [tenths of px].
func (s Scale) steps(n int) []int {
	x := make([]int, n+1)
	for i := range x {
		x[i] = tenths(s.at(float64(i) * desk.Step))
	}
	return x
}

// has tells whether a day lies on the scale.
func (s Scale) has(date cal.Date) bool {
	return date.IsSet() && date >= s.From && date < s.From+cal.Date(s.Days)
}

// month is a calendar month on a scale.
type month struct {
	year, month int
	first       cal.Date // its first day on the scale
	from, to    float64  // [px]
	whole       bool     // it begins on the scale
}

func (s Scale) months() []month {
	var out []month
	end := s.From + cal.Date(s.Days)
	for d := s.From; d < end; {
		y, m, day := d.YMD()
		next := min(cal.Of(y, m+1, 1), end)
		out = append(out, month{year: y, month: m, first: d, from: s.X(d), to: s.X(next), whole: day == 1})
		d = next
	}
	return out
}
