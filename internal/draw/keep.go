package draw

import (
	"garner/internal/desk"
)

// KeepOptions say how leaving a crop is drawn against clearing it.
type KeepOptions struct {
	HeightPX float64
	Label    string // what it shows, in text
	Texts    AxisTexts
	Gives    string                  // at the line of what it still gives
	Follows  string                  // at the line of what follows
	Best     string                  // at the best week
	Figure   func(kg float64) string // a figure of the scale
}

// The room round the lines [px].
const (
	keepTop  = 34
	keepFoot = 24
	keepLeft = 46
)

// KeepScale is the scale from the first week of a choice to the last.
func KeepScale(v *desk.KeepOrClearView, widthPX float64) Scale {
	first, last := v.Weeks[0].Clear, v.Weeks[len(v.Weeks)-1].Clear
	return Scale{From: first, Days: max(7, int(last-first)), WidthPX: widthPX - keepLeft}
}

// Keep draws, by the day of clearing, what leaving a crop until then gives, as a
// rising area, and what the best follow-on from then gives, as a falling line,
// both from zero. The best day is the pen's.
func Keep(v *desk.KeepOrClearView, s Scale, o KeepOptions) string {
	base := keepTop + o.HeightPX
	most := 1e-9
	for _, w := range v.Weeks {
		most = max(most, w.KeepKg, w.NextKg)
	}
	y := func(kg float64) float64 { return base - max(0, kg)/most*o.HeightPX }
	x := func(k int) float64 { return keepLeft + s.X(v.Weeks[k].Clear) }
	var c sheet
	c.frame("keep", "img", o.Label, s.WidthPX+keepLeft, base+keepFoot, false)
	var area, keep, next pen
	area.move(tenths(x(0)), tenths(base))
	for k, w := range v.Weeks {
		at := tenths(x(k))
		if k == 0 {
			keep.move(at, tenths(y(w.KeepKg)))
			next.move(at, tenths(y(w.NextKg)))
		}
		area.line(at, tenths(y(w.KeepKg)))
		keep.line(at, tenths(y(w.KeepKg)))
		next.line(at, tenths(y(w.NextKg)))
	}
	area.line(area.x, tenths(base))
	area.close()
	c.path("chance", area.String())
	c.path("line", keep.String())
	c.path("line dashed", next.String())
	c.level("base", keepLeft, s.WidthPX+keepLeft, base+.5)
	c.keepNames(v, s, o, x, y)
	if o.Figure != nil {
		c.text("end", keepLeft-8, base+4, o.Figure(0))
		c.text("end", keepLeft-8, y(round(most))+4, o.Figure(round(most)))
	}
	return c.done()
}

// keepNames sets the names of the lines on them, the best day and the months.
func (c *sheet) keepNames(v *desk.KeepOrClearView, s Scale, o KeepOptions, x func(int) float64, y func(float64) float64) {
	base := keepTop + o.HeightPX
	n := len(v.Weeks) - 1
	right := s.WidthPX + keepLeft
	c.text("end t-ink halo", right-8, besideLine(y(v.Weeks[n].KeepKg)), o.Gives)
	if v.Weeks[0].NextKg > 0 || v.Weeks[n/2].NextKg > 0 {
		c.text("t-ink halo", x(0)+6, besideLine(y(v.Weeks[0].NextKg)), o.Follows)
	}
	at := x(v.Best)
	c.upright("pen today", at, keepTop-14, base)
	half := widthOf(o.Best, labelSize) / 2
	c.text("t-pen mid halo", max(half+2, min(right-half-2, at)), keepTop-19, o.Best)
	for _, m := range s.months() {
		name := o.Texts.Months[m.month-1]
		if m.to-m.from > widthOf(name, labelSize)+4 {
			c.text("mid t-ink", keepLeft+(m.from+m.to)/2, base+17, name)
		}
		if m.from > 0 {
			c.upright("hair", keepLeft+m.from, base, base+keepFoot)
		}
	}
}

// besideLine is the baseline of words over a line, or under it where the drawing
// ends.
func besideLine(y float64) float64 {
	if y-7 < keepTop+8 {
		return y + 17
	}
	return y - 7
}
