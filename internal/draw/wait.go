package draw

import (
	"math"

	"garner/internal/cal"
)

// Waiting is how long a job can wait.
type Waiting struct {
	First, Best, Last cal.Date // first, best and last sensible day
}

// Sizes of what is drawn beside a job [px].
const (
	waitHeight     = 18.0
	waitAxisHeight = 22.0
	waitDot        = 5.0
	litreHeight    = 14.0
)

// Wait draws the days on which a job can be done: a line from the first that is still
// ahead to the last, with a dot on the best. A line that runs off the scale has no end.
// What it shows is said in the sentence beside it.
func Wait(s Scale, w Waiting) string {
	var c sheet
	c.unsaid("wait", s.WidthPX, waitHeight)
	mid, end := waitHeight/2, s.From+cal.Date(s.Days)
	c.level("hair", 0, s.WidthPX, mid)
	from, to := s.X(max(w.First, s.From)), s.X(w.Last+1)
	c.level("can", from, to, mid)
	if w.Last < end {
		c.upright("can", to, mid-waitDot, mid+waitDot)
	}
	if s.has(w.Best) {
		x := math.Max(waitDot, (s.X(w.Best)+s.X(w.Best+1))/2)
		c.WriteString(`<circle class="best" cx="` + px(x) + `" cy="` + px(mid) + `" r="` + px(waitDot) + `"/>`)
	}
	c.upright("pen today", 0, 1, waitHeight-1)
	return c.done()
}

// WaitAxis names days over drawings of Wait: weeks while they are few, else months.
func WaitAxis(s Scale, day func(cal.Date) string) string {
	var c sheet
	c.unsaid("wait", s.WidthPX, waitAxisHeight)
	const apart = 8.0 // between names
	end := 0.0
	for d := s.From; d < s.From+cal.Date(s.Days); d++ {
		name := day(d)
		if x := s.X(d); d == s.From || d == d.Monday() && x >= end+apart && x+widthOf(name, labelSize) <= s.WidthPX {
			c.text("", x, waitAxisHeight-7, name)
			end = x + widthOf(name, labelSize)
		}
	}
	return c.done()
}

// Litres draws litres by length beside the most that any other wants.
func Litres(litres, most, widthPX float64) string {
	if litres <= 0 || most <= 0 {
		return ""
	}
	var c sheet
	w := math.Max(3, widthPX*math.Min(1, litres/most))
	c.unsaid("litres", widthPX, litreHeight)
	c.rect("water", 0, 1, w, litreHeight-2)
	c.path("tick", "M.5 0V"+px(litreHeight)+"M"+px(w)+" 0V"+px(litreHeight))
	return c.done()
}

// unsaid opens a drawing whose words stand beside it.
func (s *sheet) unsaid(class string, w, h float64) {
	s.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="` + class + `" aria-hidden="true" focusable="false" width="` + px(w) + `" height="` + px(h) +
		`" viewBox="0 0 ` + px(w) + " " + px(h) + `">`)
}
