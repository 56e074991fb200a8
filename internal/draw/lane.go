package draw

import (
	"garner/internal/cal"
	"garner/internal/desk"
)

// LaneOptions say how a planting's lane is drawn.
type LaneOptions struct {
	HeightPX float64 // of full leaf cover
	Label    string  // what it shows, in text
	Ring     string  // what the ring does, in text; empty: no ring
	Date     string  // the planting's date, in text, for the ring
	Today    cal.Date
	Tried    bool     // it is what is being tried
	Out      cal.Date // raised indoors until then: the line is dotted; cal.None: not
	Under    bool     // it grows under another crop: a dotted outline
	Months   bool
}

// laneFloor is the least height of what is picked, as a share of full cover, so
// that the odds can be counted where leaves are few.
const laneFloor = 0.35

// lane is a lane being drawn.
type lane struct {
	view    *desk.PlantingLine
	options LaneOptions
	scale   Scale
	n       int
	x       []int
	full    int // height of full cover [tenths of px]
	base    int
}

// Lane draws a planting's course: a line from its sowing that thickens with the
// leaf, solid in ten threads while it is picked or stands ready, and a ring on a
// stem at its date where that can be moved.
func Lane(p *desk.PlantingLine, s Scale, o LaneOptions) string {
	l := &lane{view: p, options: o, scale: s, n: max(len(p.Leaf), len(p.Picked)), full: tenths(o.HeightPX)}
	l.x, l.base = s.steps(l.n), l.full+180
	var c sheet
	height := float64(l.base)/10 + 4
	c.frame("lane", "group", o.Label, s.WidthPX, height, false)
	if o.Months {
		c.path("month", monthLines(s, 0, height))
	}
	c.level("hair", 0, s.WidthPX, float64(l.base)/10+.5)
	class, solid := "leaf", "ground"
	if o.Tried {
		class, solid = "leaf tried", "draft"
	}
	if o.Under {
		class += " under"
	}
	c.path(class, l.silhouette())
	l.stem(&c)
	c.path(solid, l.picked())
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), 0, height)
	}
	l.ring(&c)
	return c.done()
}

func (l *lane) leaf(step int) float64 {
	if step < 0 || step >= len(l.view.Leaf) {
		return 0
	}
	return max(0, min(1, float64(l.view.Leaf[step])))
}

// height is a step's leaf cover [tenths of px].
func (l *lane) height(step int) int { return int(float64(l.full)*l.leaf(step) + 0.5) }

// silhouette is the leaf cover over time: straight from the middle of one step
// to the next, closed along the ground.
func (l *lane) silhouette() string {
	var p pen
	open := false
	for i := range l.n {
		h := l.height(i)
		middle := (l.x[i] + l.x[i+1]) / 2
		switch {
		case h > 0 && !open:
			p.move(l.x[i], l.base)
			open = true
		case h == 0 && open:
			p.line(l.x[i], l.base)
			p.close()
			open = false
		}
		if open {
			p.line(middle, l.base-h)
		}
	}
	if open {
		p.line(l.x[l.n], p.y)
		p.line(l.x[l.n], l.base)
		p.close()
	}
	return p.String()
}

// picked is the solid part: ten threads under the silhouette.
func (l *lane) picked() string {
	w := newWeave(l.x, desk.Threads, func(step, row int) int {
		h := float64(l.full) * max(laneFloor, l.leaf(step))
		return l.base - int(h*float64(row)/desk.Threads+0.5)
	})
	for i, p := range l.view.Picked {
		for j := range desk.Threads {
			if holds(float64(p), j) {
				w.fill(i, j)
			}
		}
	}
	return w.outline()
}

// stemThickness is the height from which the leaf is drawn by its silhouette
// alone [tenths of px].
const stemThickness = 8

// stem is the line from the sowing to the first leaf: dotted while the plants
// are indoors.
func (l *lane) stem(c *sheet) {
	if !l.view.Date.IsSet() || l.view.Date >= l.scale.From+cal.Date(l.scale.Days) {
		return
	}
	from, y := l.scale.X(l.view.Date), float64(l.base)/10-.8
	if out := l.options.Out; out.IsSet() && out > l.view.Date {
		c.level("thin dotted", from, l.scale.X(out), y-.7)
		from = l.scale.X(out)
	}
	to := from
	for i := range l.n {
		if x := float64(l.x[i]) / 10; l.height(i) >= stemThickness && x >= from {
			to = x
			break
		}
	}
	class := "line"
	if l.options.Tried {
		class = "pen today"
	}
	if to > from {
		c.level(class, from, to, y)
	}
}

// The ring of a date that can be moved [px]: its size, how far it stands over
// the ground, and how far round it a finger finds it.
const (
	ringSize  = 5
	ringStem  = 16
	ringReach = 24
)

func (l *lane) ring(c *sheet) {
	if l.options.Ring == "" || !l.view.Movable || !l.scale.has(l.view.Date) {
		return
	}
	x, y := px(l.scale.X(l.view.Date)), float64(l.base)/10
	c.WriteString(`<g` + attributes("class", "ring", "tabindex", "0", "role", "slider", "aria-label", l.options.Ring,
		"aria-valuemin", "0", "aria-valuemax", whole(l.scale.Days), "aria-valuenow", whole(int(l.view.Date-l.scale.From)),
		"aria-valuetext", l.options.Date, "data-planting", l.view.ID, "data-date", l.view.Date.String(),
		"data-from", l.scale.From.String(), "data-days", whole(l.scale.Days)) + `>`)
	c.upright("stem", l.scale.X(l.view.Date), y+1, y-ringStem+ringSize)
	for _, r := range []struct {
		class string
		size  int
	}{{"reach", ringReach}, {"handle", ringSize}} {
		c.WriteString(`<circle class="` + r.class + `" cx="` + x + `" cy="` + px(y-ringStem) + `" r="` + whole(r.size) + `"/>`)
	}
	c.WriteString(`</g>`)
}
