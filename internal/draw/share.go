package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// ShareOptions say how the sum of the table is drawn.
type ShareOptions struct {
	HeightPX float64
	Label    string // what it shows, in text
	Today    cal.Date
	Thinnest cal.Date // the week with the least; cal.None: not named
	ThinText string   // set there
	Poor     string   // names the poor year's edge
	Months   bool
}

// shareThread is the thickness of a thread of the sum [px].
const shareThread = 2.2

// Share draws the whole plate: its height is all that is wanted in a week, solid
// what comes out of the ground, hatched out of store, with the edge of the poor
// year of ten. The thresholds of the ten threads are repeated over more threads.
func Share(v *desk.RibbonView, s Scale, o ShareOptions) string {
	const air = 6
	h := tenths(o.HeightPX)
	base, n := h+10*air, len(v.Food[0])
	x, rows := s.steps(n), max(1, int(o.HeightPX/shareThread+0.5))
	row := func(_, row int) int { return base - h*row/rows }
	solid, hatched := newWeave(x, rows, row), newWeave(x, rows, row)
	for i := range n {
		for j := range rows {
			at := (float64(j) + 0.5) / float64(rows)
			switch {
			case weekly(v.WantKg, i) <= 0:
			case holds(reach(&v.Ground, i, at), j):
				solid.fill(i, j)
			case holds(reach(&v.Food, i, at), j):
				hatched.fill(i, j)
			}
		}
	}
	var c sheet
	c.frame("ribbon share", "img", o.Label, s.WidthPX, float64(base)/10+2, true)
	c.rect("open", 0, air, s.WidthPX, o.HeightPX)
	if o.Months {
		c.path("month", monthLines(s, air, float64(base)/10))
	}
	c.path("store", hatched.outline())
	c.path("ground", solid.outline())
	c.edge(stepLine(x, base, func(i int) (int, bool) {
		return int(float64(h) * heightAt(&v.Food, i, poorYear)), weekly(v.WantKg, i) > 0
	}))
	c.level("want", 0, s.WidthPX, air)
	if s.has(o.Thinnest) {
		c.text("mid b t-ink halo", min(s.WidthPX-18, max(18, s.X(o.Thinnest))), air+14, o.ThinText)
	}
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), -2, float64(base)/10+2)
	}
	return c.done()
}
