package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// LevelOptions say how the level of a store is drawn.
type LevelOptions struct {
	HeightPX float64
	Label    string // what it shows, in text
	Today    cal.Date
	Full     string // names the top: the room there is
}

// levelStep is how many days lie between two points of a line; levels change slowly.
const levelStep = 2

// Level draws what a store holds against the room in it: hatched what is there in
// the poor year of ten, and a fine line for each tenth of the years, the middle one
// firm.
func Level(v *desk.StoreView, s Scale, o LevelOptions) string {
	var c sheet
	c.frame("level", "img", o.Label, s.WidthPX, o.HeightPX+levelFoot, false)
	base, top := o.HeightPX, max(v.CapacityKg, v.MostKg)
	y := func(kg float64) int { return tenths(base - kg/top*(o.HeightPX-levelTop)) }
	c.path("month", monthLines(s, levelTop, base))
	c.level("hair", 0, s.WidthPX, float64(y(v.CapacityKg))/10)
	if poor := v.Kg[0]; len(poor) > 0 {
		c.path("store", levelArea(poor, s, tenths(base), y))
	}
	for d, kg := range v.Kg {
		class := "thin"
		if d == middleDecile {
			class = "line"
		}
		c.path(class, levelLine(kg, s, y))
	}
	c.level("base", 0, s.WidthPX, base)
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), 0, base)
	}
	c.text("f14 t-ink halo", levelInset, levelTop-5, o.Full)
	return c.done()
}

// The room over a level, under it, and before its words [px].
const (
	levelTop   = 18
	levelFoot  = 3
	levelInset = 8
)

// middleDecile is where the middle year lies among the deciles.
const middleDecile = 4

func levelLine(kg []float64, s Scale, y func(float64) int) string {
	if len(kg) == 0 {
		return ""
	}
	var p pen
	for i, at := range levelPoints(len(kg)) {
		x := tenths(s.at(float64(at)))
		if i == 0 {
			p.move(x, y(kg[at]))
		}
		p.line(x, y(kg[at]))
	}
	return p.String()
}

func levelArea(kg []float64, s Scale, base int, y func(float64) int) string {
	var p pen
	p.move(0, base)
	for _, at := range levelPoints(len(kg)) {
		p.line(tenths(s.at(float64(at))), y(kg[at]))
	}
	p.line(p.x, base)
	p.close()
	return p.String()
}

// levelPoints are the days at which a line has points, the last among them.
func levelPoints(days int) []int {
	var out []int
	for day := 0; day < days; day += levelStep {
		out = append(out, day)
	}
	if out[len(out)-1] != days-1 {
		out = append(out, days-1)
	}
	return out
}
