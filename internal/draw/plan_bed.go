package draw

import (
	"math"

	"garner/internal/desk"
	"garner/internal/place"
)

// planBed is a bed in its own frame: metres along it from its left end, y up, with
// the plan turned about it.
type planBed struct {
	*sitePlan
	bed                    *desk.BedYear
	corners                []place.Point
	left, right, low, high float64 // its bounds [m]
	turn                   float64 // [degrees]
	midX, midY             float64 // its spot on the drawing [px]
	parts                  []desk.Part
}

// bed draws one bed and what stands in it.
func (p *sitePlan) bed(b *desk.BedYear) {
	own := p.planBed(b)
	if p.options.Bed != nil {
		label, path := p.options.Bed(b)
		p.WriteString(`<a` + attributes("class", "plan-bed", "href", path, "aria-label", label, "data-bed", b.ID, "data-try", "") + `>`)
	}
	p.WriteString(`<g transform="translate(` + px(own.midX) + " " + px(own.midY) + `) rotate(` + px(-own.turn) + `)">`)
	p.path("plan-bed-ground", own.shape(own.corners))
	for _, part := range own.parts {
		own.draw(part)
	}
	if b.ID == p.options.Selected {
		own.chosen()
	}
	own.words()
	p.WriteString(`</g>`)
	if p.options.Bed != nil {
		p.WriteString(`</a>`)
	}
}

func (p *sitePlan) planBed(b *desk.BedYear) *planBed {
	flat := b.Bed
	flat.At = place.Spot{}
	own := &planBed{sitePlan: p, bed: b, corners: flat.Corners(), turn: b.At.TurnDeg}
	if b.Shape != place.ByOutline { // the same shape, words upright
		own.turn = math.Remainder(own.turn, 180)
	}
	own.midX, own.midY = p.at(place.Point{X: b.At.XM, Y: b.At.YM})
	own.left, own.right, own.low, own.high = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, c := range own.corners {
		own.left, own.right = min(own.left, c.X), max(own.right, c.X)
		own.low, own.high = min(own.low, c.Y), max(own.high, c.Y)
	}
	own.parts = b.On(p.options.Day)
	return own
}

// along is how far along the bed a share of its ground ends [m].
func (b *planBed) along(share float64) float64 {
	if b.bed.Shape != place.Round && b.bed.Shape != place.ByOutline {
		return b.left + share*(b.right-b.left)
	}
	whole, low, high := place.Area(b.corners), b.left, b.right
	for range 30 {
		mid := (low + high) / 2
		if place.Area(clipped(b.corners, b.left, mid, b.low, b.high)) < share*whole {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// footHeight is how high the leaf along the foot of a bed is drawn [px].
const footHeight = 5.0

func (b *planBed) draw(part desk.Part) {
	from, to := b.along(part.At), b.along(part.At+part.Share)
	piece := b.shape(clipped(b.corners, from, to, b.low, b.high))
	if part.Held == nil {
		b.sitePlan.path("plan-free dashed", piece)
		return
	}
	h, solid, class := part.Held, "ground", "plan-held"
	if b.options.Tried[h.ID] {
		solid, class = "draft", "plan-held tried"
	}
	b.sitePlan.path(class, piece)
	foot := b.low + footHeight/b.perM
	b.sitePlan.path(solid, b.shape(clipped(b.corners, from, from+(to-from)*b.leafOf(h), b.low, foot)))
	b.sitePlan.path("plan-foot", b.shape(clipped(b.corners, from, to, b.low, foot)))
}

// leafOf is a planting's leaf cover on the day, 0-1.
func (b *planBed) leafOf(h *desk.HeldGround) float64 {
	step := int(float64(b.options.Day-b.view.From) / desk.Step)
	if step < 0 || step >= len(h.Leaf) {
		return 0
	}
	return max(0, min(1, float64(h.Leaf[step])))
}

// chosen is the pen's line about a bed that is selected.
func (b *planBed) chosen() {
	if b.bed.Shape == place.Round || b.bed.Shape == place.ByOutline {
		b.sitePlan.path("pen", b.shape(b.corners))
		return
	}
	x, y := b.left*b.perM, -b.high*b.perM
	w, h := (b.right-b.left)*b.perM, (b.high-b.low)*b.perM
	b.rect("pen", x-4, y-4, w+8, h+8)
}

// shape is the path round corners of the bed's frame, about its spot.
func (b *planBed) shape(corners []place.Point) string {
	return toScale{perM: b.perM}.outline(corners)
}

// clipped is the part of a shape between two lengths and two widths of its frame.
func clipped(corners []place.Point, left, right, low, high float64) []place.Point {
	for _, side := range []func(p place.Point) float64{
		func(p place.Point) float64 { return p.X - left },
		func(p place.Point) float64 { return right - p.X },
		func(p place.Point) float64 { return p.Y - low },
		func(p place.Point) float64 { return high - p.Y },
	} {
		corners = halved(corners, side)
	}
	return corners
}

// halved is the part of a shape where a measure of its points is not below nought.
func halved(corners []place.Point, of func(p place.Point) float64) []place.Point {
	var out []place.Point
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		a, b := of(p), of(q)
		if a >= 0 {
			out = append(out, p)
		}
		if (a >= 0) != (b >= 0) {
			t := a / (a - b)
			out = append(out, place.Point{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y)})
		}
	}
	return out
}
