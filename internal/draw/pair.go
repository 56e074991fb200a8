package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// PairOptions say how two crops on the same ground are drawn.
type PairOptions struct {
	HeightPX     float64 // of full leaf cover, and of all the light
	Label        string  // what it shows, in text
	Months       [12]string
	Year         func(year int) string
	Today        cal.Date
	TodayIs      string
	Upper, Lower string // names upon their leaves
	Light        string // title of the panel of light
	All, None    string // all of the light, and none of it, at the scale
}

// The room round the two parts of a pair [px].
const (
	pairTop   = 20 // today's word
	pairTitle = 30 // over the light
	pairFoot  = 24 // months
)

// PairScale is the scale from the first week of a pair to the last.
func PairScale(weeks []desk.PairWeek, widthPX float64) Scale {
	if len(weeks) == 0 {
		return Scale{WidthPX: widthPX}
	}
	return Scale{From: weeks[0].Monday, Days: 7 * len(weeks), WidthPX: widthPX}
}

// Pair draws two crops on the same ground over one time: the upper's leaf as a
// silhouette on the ground's line, the lower's hanging below it, and under both
// the share of the light that the lower gets, with the darkest and the brightest
// year of ten as fine lines.
func Pair(weeks []desk.PairWeek, s Scale, o PairOptions) string {
	line := pairTop + o.HeightPX
	lit := line + o.HeightPX + pairTitle + o.HeightPX
	var c sheet
	c.frame("course", "img", o.Label, s.WidthPX, lit+pairFoot, false)
	c.path("month", monthLines(s, pairTop, lit))
	c.path("leaf", silhouette(weeks, s, line, -o.HeightPX, func(w *desk.PairWeek) float64 { return w.Upper }))
	c.path("leaf under", silhouette(weeks, s, line, o.HeightPX, func(w *desk.PairWeek) float64 { return w.Lower }))
	c.level("base", 0, s.WidthPX, line)
	c.text("t-ink f14 halo", 4, line-o.HeightPX+13, o.Upper)
	c.text("t-ink f14 halo", 4, line+o.HeightPX-4, o.Lower)
	c.text("t-ink b f14 halo", 0, line+o.HeightPX+pairTitle-9, o.Light)
	c.level("hair", 0, s.WidthPX, lit-o.HeightPX)
	for _, of := range []struct {
		class string
		share func(*desk.PairWeek) float64
	}{
		{"thin", func(w *desk.PairWeek) float64 { return w.Poor }},
		{"thin", func(w *desk.PairWeek) float64 { return w.Good }},
		{"line", func(w *desk.PairWeek) float64 { return w.Light }},
	} {
		c.path(of.class, litLine(weeks, s, lit, o.HeightPX, of.share))
	}
	c.level("base", 0, s.WidthPX, lit)
	c.text("end", -8, lit+4, o.None)
	c.text("end", -8, lit-o.HeightPX+4, o.All)
	c.path("hair", monthLines(s, lit, lit+pairFoot))
	c.monthNames(s, lit+16, AxisTexts{Months: o.Months, Year: o.Year})
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), pairTop, lit)
		c.text("t-pen halo", s.X(o.Today)+4, pairTop-6, o.TodayIs)
	}
	return c.done()
}

// leastSeen is the cover from which a leaf is drawn.
const leastSeen = 0.005

// silhouette is a leaf cover by week, from the line up or, of a height over 0,
// down.
func silhouette(weeks []desk.PairWeek, s Scale, line, height float64, of func(*desk.PairWeek) float64) string {
	var p pen
	base, open := tenths(line), false
	for i := range weeks {
		w := &weeks[i]
		cover := of(w)
		switch {
		case cover >= leastSeen && !open:
			p.move(tenths(s.X(w.Monday)), base)
			open = true
		case cover < leastSeen && open:
			p.line(tenths(s.X(w.Monday)), base)
			p.close()
			open = false
		}
		if open {
			p.line(tenths(s.X(w.Monday+3)), base+tenths(cover*height))
		}
	}
	if open {
		p.line(tenths(s.WidthPX), p.y)
		p.line(tenths(s.WidthPX), base)
		p.close()
	}
	return p.String()
}

// litLine is a share of the light over the weeks in which the lower crop has
// leaf.
func litLine(weeks []desk.PairWeek, s Scale, foot, height float64, of func(*desk.PairWeek) float64) string {
	var p pen
	open := false
	for i := range weeks {
		w := &weeks[i]
		if !w.Lit {
			open = false
			continue
		}
		x, y := tenths(s.X(w.Monday+3)), tenths(foot-of(w)*height)
		if !open {
			p.move(x, y)
			open = true
			continue
		}
		p.line(x, y)
	}
	return p.String()
}
