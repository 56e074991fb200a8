package draw

import (
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
	toScale
	view    *desk.GroundYearView
	options *PlanOptions
	w, h    float64 // [px]
	taken   []taken // where words stand
}

// Plan draws a site to scale on a day: its beds, divided by what stands in them,
// and what stands round them.
func Plan(v *desk.GroundYearView, o PlanOptions) string {
	p := &sitePlan{view: v, options: &o}
	p.perM = o.WidthPX / max(1, v.Site.PlanWidthM)
	if o.HeightPX > 0 {
		p.perM = min(p.perM, o.HeightPX/max(1, v.Site.PlanDepthM))
	}
	p.w, p.h = v.Site.PlanWidthM*p.perM, v.Site.PlanDepthM*p.perM
	p.foot = p.h
	p.frame("plan", "group", o.Label, p.w, p.h+planFoot, false)
	p.rect("plan-ground", 0, 0, p.w, p.h)
	lines := p.light()
	// A feature may reach beyond the plan's edge.
	p.WriteString(`<svg` + attributes("class", "plan-inside", "width", px(p.w), "height", px(p.h)) + `>`)
	for i := range v.Features {
		f := &v.Features[i]
		p.feature(p.toScale, f, planLook, o.InLeaf != nil && !o.InLeaf(f))
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
	p.bar(p.toScale, scaleBar{class: "scale-bar", to: p.w - 1, y: p.h + 11, tick: 8, most: p.w / 4, metres: o.Metres})
	return p.done()
}

// light draws the light beneath the beds and returns the lines between its tones.
func (p *sitePlan) light() [][][]spot {
	v := p.options.Light
	if v == nil || len(v.Map.Light) == 0 {
		return nil
	}
	m := &lightMap{view: v, toScale: p.toScale, w: p.w, h: p.h}
	lines := m.tones(fieldOf(v, p.perM))
	p.WriteString(m.String())
	return lines
}

// lightNames tell the shares of light at the lines, clear of beds and features.
func (p *sitePlan) lightNames(lines [][][]spot) {
	if p.options.Percent == nil {
		return
	}
	corner := taken{p.w - 48, p.h - 53, p.w, p.h} // the arrow's
	m := &lightMap{view: p.options.Light, toScale: p.toScale, w: p.w, h: p.h, taken: append(p.taken, corner)}
	for _, b := range p.view.Beds {
		m.taken = append(m.taken, m.bounds(b.Corners()))
	}
	for i := range p.view.Features {
		if f := &p.view.Features[i]; !f.Tree() && f.Kind != place.Path {
			m.taken = append(m.taken, m.bounds(f.Corners()))
		}
	}
	for k, loops := range lines {
		m.levelNames(loops, p.options.Percent(lightLevels[k]))
	}
	p.WriteString(m.String())
}

// planLook is the look of what stands round the beds of a plan.
var planLook = featureLook{path: "plan-path", crown: "plan-crown", building: "plan-building", wall: "plan-wall"}

// featureName names what stands round the beds, along it where it is narrow.
func (p *sitePlan) featureName(f *place.Feature) {
	if p.options.Feature == nil {
		return
	}
	box := p.bounds(f.Corners())
	left, right := min(max(box.left, 0), p.w), max(min(box.right, p.w), 0)
	top, bottom := min(max(box.top, 0), p.h), max(min(box.bottom, p.h), 0)
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
		if b.At.IsSet() && words.meets(p.bounds(b.Corners())) {
			return true
		}
	}
	return false
}

// north is an arrow in the plan's corner.
func (p *sitePlan) north() {
	x, y := p.w-26, p.h-28.0
	p.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `) rotate(` + px(-p.view.Site.UpDeg) + `)">`)
	p.WriteString(`<circle class="plate" cx="0" cy="-3" r="22"/>`)
	p.path("north", northArrow(16, 15, 10))
	p.text("mid t-ink b halo", 0, -18, p.options.North)
	p.WriteString(`</g>`)
}
