package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/place"
)

// PlanOptions say how a site's plan is drawn. Functions give words, the longest
// first; what does not fit is left out.
type PlanOptions struct {
	WidthPX  float64         // at most
	HeightPX float64         // at most, without its scale; 0: as wide as it may be
	Label    string          // what it shows, in text
	Light    *desk.ShadeView // the light to lie beneath the beds; nil: none
	Percent  func(share float64) string
	Day      cal.Date
	Selected string          // bed
	Tried    map[string]bool // plantings that are being tried
	Bed      func(b *desk.BedYear) (label, path string)
	BedNames func(b *desk.BedYear) []string
	Names    func(h *desk.HeldGround) []string
	Until    func(h *desk.HeldGround) []string // until when it stands
	Free     string
	Feature  func(f *place.Feature) []string
	InLeaf   func(f *place.Feature) bool
	Metres   func(m float64) string
	North    string
}

// planFoot is the room under a plan for its scale [px].
const planFoot = 26.0

// sitePlan is a plan being drawn.
type sitePlan struct {
	sheet
	view    *desk.GroundYearView
	options *PlanOptions
	perM    float64 // [px/m]
	w, h    float64 // [px]
	taken   []taken // where words stand
}

// Plan draws a site to scale on a day: its beds, divided by what stands in them,
// and what stands round them.
func Plan(v *desk.GroundYearView, o PlanOptions) string {
	p := &sitePlan{view: v, options: &o, perM: o.WidthPX / max(1, v.Site.PlanWidthM)}
	if o.HeightPX > 0 {
		p.perM = min(p.perM, o.HeightPX/max(1, v.Site.PlanDepthM))
	}
	p.w, p.h = v.Site.PlanWidthM*p.perM, v.Site.PlanDepthM*p.perM
	p.frame("plan", "group", o.Label, p.w, p.h+planFoot, false)
	p.rect("plan-ground", 0, 0, p.w, p.h)
	lines := p.light()
	// A feature may reach beyond the plan's edge.
	p.WriteString(`<svg` + attributes("class", "plan-inside", "width", px(p.w), "height", px(p.h)) + `>`)
	for i := range v.Features {
		p.feature(&v.Features[i])
	}
	p.WriteString(`</svg>`)
	for _, b := range v.Beds {
		if b.At.IsSet() {
			p.bed(b)
		}
	}
	for i := range v.Features {
		p.featureName(&v.Features[i])
	}
	p.lightNames(lines)
	if v.Drawn {
		p.rect("plan-edge", 0, 0, p.w, p.h)
		p.north()
	}
	p.bar()
	return p.done()
}

// light draws the light beneath the beds and returns the lines between its tones.
func (p *sitePlan) light() [][][]spot {
	v := p.options.Light
	if v == nil || len(v.Map.Light) == 0 {
		return nil
	}
	m := &lightMap{view: v, perM: p.perM, w: p.w, h: p.h}
	lines := m.tones(fieldOf(v, p.perM))
	p.WriteString(m.String())
	return lines
}

// lightNames tell the shares of light at the lines, clear of beds and features.
func (p *sitePlan) lightNames(lines [][][]spot) {
	if p.options.Percent == nil {
		return
	}
	m := &lightMap{view: p.options.Light, perM: p.perM, w: p.w, h: p.h, taken: append(p.taken, taken{p.w - 48, p.h - 53, p.w, p.h})} // the arrow's corner
	for _, b := range p.view.Beds {
		m.taken = append(m.taken, m.boundsOf(b.Corners()))
	}
	for i := range p.view.Features {
		if f := &p.view.Features[i]; !f.Tree() && f.Kind != place.Path {
			m.taken = append(m.taken, m.boundsOf(f.Corners()))
		}
	}
	for k, loops := range lines {
		m.levelNames(loops, p.options.Percent(lightLevels[k]))
	}
	p.WriteString(m.String())
}

// at is where a point of the plan lies [px].
func (p *sitePlan) at(q place.Point) (x, y float64) { return q.X * p.perM, p.h - q.Y*p.perM }

// outline is the path round corners of the plan.
func (p *sitePlan) outline(corners []place.Point) string {
	var out pen
	for i, q := range corners {
		x, y := p.at(q)
		if i == 0 {
			out.move(tenths(x), tenths(y))
		} else {
			out.line(tenths(x), tenths(y))
		}
	}
	if len(corners) == 0 {
		return ""
	}
	out.close()
	return out.String()
}

func (p *sitePlan) feature(f *place.Feature) {
	d := p.outline(f.Corners())
	switch {
	case f.Kind == place.Path:
		p.path("plan-path", d)
	case f.Tree():
		class := "plan-crown"
		if p.options.InLeaf != nil && !p.options.InLeaf(f) {
			class += " bare"
		}
		p.path(class, d)
		x, y := p.at(place.Point{X: f.At.XM, Y: f.At.YM})
		p.WriteString(`<circle class="p-ink" cx="` + px(x) + `" cy="` + px(y) + `" r="4"/>`)
	case f.Kind == place.Building:
		p.path("plan-building", d)
	default:
		p.path("plan-wall", d)
	}
}

// featureName names what stands round the beds, along it where it is narrow.
func (p *sitePlan) featureName(f *place.Feature) {
	if p.options.Feature == nil {
		return
	}
	left, top, right, bottom := p.bounds(f.Corners())
	left, right = min(max(left, 0), p.w), max(min(right, p.w), 0)
	top, bottom = min(max(top, 0), p.h), max(min(bottom, p.h), 0)
	x, y, w, h := (left+right)/2, (top+bottom)/2, right-left, bottom-top
	for _, words := range p.options.Feature(f) {
		long := widthOf(words, labelSize)
		p.taken = append(p.taken, taken{x - long/2, y - 14, x + long/2, y + 20})
		switch {
		case f.Tree() && long+8 < w*1.6:
			y = min(p.h-6, max(y+19, 12))
			p.text("mid t-ink halo", max(long/2+3, min(p.w-long/2-3, x)), y, words)
		case long+8 < w && h >= 13:
			p.text("mid t-ink halo", x, y+4.5, words)
		case long+8 < h && w >= 13:
			p.WriteString(`<text class="mid t-ink halo" transform="translate(` + px(x+4.5) + " " + px(y) + `) rotate(-90)">` + escaped(words) + `</text>`)
		case long+8 < w && f.Kind != place.Path:
			base := min(p.h-4, bottom+14)
			x, found := p.clearAlong(left, right, base, long)
			if !found {
				continue
			}
			p.text("mid t-ink halo", x, base, words)
		default:
			continue
		}
		return
	}
}

// clearAlong is where along a feature words set beneath it hide no bed: at its
// middle, else at one of its ends.
func (p *sitePlan) clearAlong(left, right, base, long float64) (x float64, found bool) {
	for _, x := range []float64{(left + right) / 2, left + long/2, right - long/2} {
		x = max(long/2+3, min(p.w-long/2-3, x))
		if !p.overBed(taken{x - long/2, base - 12, x + long/2, base + 4}) {
			return x, true
		}
	}
	return 0, false
}

func (p *sitePlan) overBed(words taken) bool {
	for _, b := range p.view.Beds {
		left, top, right, bottom := p.bounds(b.Corners())
		if b.At.IsSet() && words.meets(taken{left, top, right, bottom}) {
			return true
		}
	}
	return false
}

// bounds is the upright box about corners [px].
func (p *sitePlan) bounds(corners []place.Point) (left, top, right, bottom float64) {
	left, top, right, bottom = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range corners {
		x, y := p.at(q)
		left, top, right, bottom = min(left, x), min(top, y), max(right, x), max(bottom, y)
	}
	return left, top, right, bottom
}

// north is an arrow in the plan's corner.
func (p *sitePlan) north() {
	x, y := p.w-26, p.h-28.0
	p.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `) rotate(` + px(-p.view.Site.UpDeg) + `)">`)
	p.WriteString(`<circle class="plate" cx="0" cy="-3" r="22"/>`)
	p.path("north", "M0 16V-14M-5 -5L0 -15L5 -5")
	p.text("mid t-ink b halo", 0, -18, p.options.North)
	p.WriteString(`</g>`)
}

// bar is a length of the plan, in metres.
func (p *sitePlan) bar() {
	long := 1.0
	for _, m := range []float64{2, 5, 10, 20, 50} {
		if m*p.perM < p.w/4 {
			long = m
		}
	}
	y, to := p.h+11, p.w-1
	from := to - long*p.perM
	p.path("scale-bar", "M"+px(from)+" "+px(y-4)+"v8M"+px(from)+" "+px(y)+"h"+px(to-from)+"M"+px(to)+" "+px(y-4)+"v8")
	if p.options.Metres != nil {
		p.text("end t-ink", from-7, y+4.5, p.options.Metres(long))
	}
}
