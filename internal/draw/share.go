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
	Months   bool
}

// Share draws the whole plate: its height is all that is wanted in a week, solid
// what comes out of the ground in the middle year, hatched out of store, with the
// edge of the poor year of ten. Weeks are averaged: the plate is a slow thing.
func Share(v *desk.RibbonView, s Scale, o ShareOptions) string {
	const air = 6
	h := tenths(o.HeightPX)
	base, n := h+10*air, len(v.Food[0])
	x := s.steps(n)
	course := func(levels *[desk.Threads][]float32, p float64) func(int) int {
		return func(i int) int {
			if weekly(v.WantKg, i) <= 0 {
				return 0
			}
			return int(float64(h)*meanOfWeek(n, i, func(k int) float64 { return heightAt(levels, k, p) }) + 0.5)
		}
	}
	solid, food := course(&v.Ground, middleYear), course(&v.Food, middleYear)
	var c sheet
	c.frame("ribbon share", "img", o.Label, s.WidthPX, float64(base)/10+2, true)
	c.rect("open", 0, air, s.WidthPX, o.HeightPX)
	if o.Months {
		c.path("month", monthLines(s, air, float64(base)/10))
	}
	c.path("store", between(x, base, solid, food))
	c.path("ground", between(x, base, func(int) int { return 0 }, solid))
	c.edge(stepLine(x, base, course(&v.Food, poorYear)))
	c.level("want", 0, s.WidthPX, air)
	if s.has(o.Thinnest) {
		c.text("mid b t-ink halo", min(s.WidthPX-18, max(18, s.X(o.Thinnest))), air+14, o.ThinText)
	}
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), -2, float64(base)/10+2)
	}
	return c.done()
}
