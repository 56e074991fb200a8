package draw

import (
	"math"

	"garner/internal/place"
)

// toScale lays metres of a plan, from its lower left corner, on a drawing.
type toScale struct {
	perM       float64 // [px/m]
	left, foot float64 // where the corner is drawn [px]
}

// at is where a point of the plan lies [px].
func (s toScale) at(p place.Point) (x, y float64) { return s.left + p.X*s.perM, s.foot - p.Y*s.perM }

// outline is the path round corners of the plan; of fewer than three there is none.
func (s toScale) outline(corners []place.Point) string {
	if len(corners) < 3 {
		return ""
	}
	var out pen
	for i, p := range corners {
		x, y := s.at(p)
		if i == 0 {
			out.move(tenths(x), tenths(y))
		} else {
			out.line(tenths(x), tenths(y))
		}
	}
	out.close()
	return out.String()
}

// bounds is the upright box about corners of the plan.
func (s toScale) bounds(corners []place.Point) taken {
	b := taken{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range corners {
		x, y := s.at(p)
		b = taken{min(b.left, x), min(b.top, y), max(b.right, x), max(b.bottom, y)}
	}
	return b
}

// featureLook are the classes of what stands round the beds.
type featureLook struct{ path, crown, building, wall string }

// feature draws what stands round the beds; a tree with its trunk.
func (c *sheet) feature(s toScale, f *place.Feature, look featureLook, bare bool) {
	d := s.outline(f.Corners())
	switch {
	case f.Kind == place.Path:
		c.path(look.path, d)
	case f.Tree():
		class := look.crown
		if bare {
			class += " bare"
		}
		c.path(class, d)
		x, y := s.at(place.Point{X: f.At.XM, Y: f.At.YM})
		c.WriteString(`<circle class="p-ink" cx="` + px(x) + `" cy="` + px(y) + `" r="4"/>`)
	case f.Kind == place.Building:
		c.path(look.building, d)
	default:
		c.path(look.wall, d)
	}
}

// scaleBar is how the length that tells a plan's scale is drawn.
type scaleBar struct {
	class  string
	to, y  float64 // where it ends [px]
	tick   float64 // how high its ends are [px]
	most   float64 // how long it may be [px]
	metres func(m float64) string
}

// scaleLengths are the lengths a scale is told by [m].
var scaleLengths = []float64{1, 2, 5, 10, 20, 50, 100, 200, 500}

// bar draws a round length of the plan, the longest that has room, and its metres
// before it.
func (c *sheet) bar(s toScale, b scaleBar) {
	long := scaleLengths[0]
	for _, m := range scaleLengths {
		if m*s.perM < b.most {
			long = m
		}
	}
	from, tick := b.to-long*s.perM, "v"+px(b.tick)
	top := px(b.y - b.tick/2)
	c.path(b.class, "M"+px(from)+" "+top+tick+"M"+px(from)+" "+px(b.y)+"H"+px(b.to)+"M"+px(b.to)+" "+top+tick)
	if b.metres != nil {
		c.text("t-ink end", from-b.tick/2-3, b.y+b.tick/4+2.5, b.metres(long))
	}
}

// northArrow is the path of an arrow upwards: how far below the middle its shaft
// begins, how far above it the head stands, and how far its barbs come down [px].
func northArrow(shaft, head, barbs float64) string {
	down := px(barbs - head)
	return "M0 " + px(shaft) + "V" + px(1-head) + "M-5 " + down + "L0 " + px(-head) + "L5 " + down
}
