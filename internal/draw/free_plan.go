package draw

import (
	"html"
	"math"

	"garner/internal/desk"
)

// FreePlanOptions say how a plan of free ground is drawn. Functions give words;
// what does not fit is left out.
type FreePlanOptions struct {
	WidthPX  float64 // at most
	HeightPX float64 // at most
	Label    string  // what it shows, in text
	Free     string  // the one word on free ground
	Metres   func(m float64) string
}

// freePlan is a site's plan with its free ground, being drawn.
type freePlan struct {
	sheet
	site  *desk.SiteSpace
	perM  float64     // [px/m]
	h     float64     // [px]
	named [][]float64 // boxes of the words set: left, top, right, bottom
}

// corners are a list of x and y on the plan [m].
type corners [][2]float64

// FreePlan draws a site's beds to scale and, dashed, the ground of them that comes
// free. It is empty when no plan of the site is drawn.
func FreePlan(v *desk.SpaceView, site *desk.SiteSpace, o FreePlanOptions) string {
	if site.PlanWidthM <= 0 || site.PlanDepthM <= 0 {
		return ""
	}
	p := &freePlan{site: site, perM: min(o.WidthPX/site.PlanWidthM, o.HeightPX/site.PlanDepthM)}
	p.h = site.PlanDepthM * p.perM
	p.frame("free-plan", "img", o.Label, site.PlanWidthM*p.perM, p.h+freePlanFoot, false)
	p.rect("free-plan-ground", 0, 0, site.PlanWidthM*p.perM, p.h)
	for i := range site.Features {
		f := &site.Features[i]
		var c corners
		for _, q := range f.Corners() {
			c = append(c, [2]float64{q.X, q.Y})
		}
		p.path("free-plan-feature", p.outline(c))
	}
	for i := range v.Beds {
		if b := &v.Beds[i]; b.Site == site.ID && b.At.IsSet() {
			var c corners
			for _, q := range b.Corners() {
				c = append(c, [2]float64{q.X, q.Y})
			}
			p.path("free-plan-bed", p.outline(c))
		}
	}
	p.pieces(v, o.Free)
	p.scale(o.Metres)
	return p.done()
}

// freePlanFoot is the room under the plan for its scale [px].
const freePlanFoot = 24

// pieces draws the free ground: outlines first, so that no line runs over a word.
func (p *freePlan) pieces(v *desk.SpaceView, word string) {
	var all []corners
	for i := range v.Beds {
		for k := range v.Free {
			if b, f := &v.Beds[i], &v.Free[k]; b.Site == p.site.ID && f.Bed == b.ID && len(f.Corners) > 0 {
				var c corners
				for _, q := range f.Corners {
					c = append(c, [2]float64{q.X, q.Y})
				}
				all = append(all, c)
				p.path("free-plan-free", p.outline(c))
			}
		}
	}
	for _, c := range all {
		p.word(c, word)
	}
}

// outline is the path round corners.
func (p *freePlan) outline(c corners) string {
	if len(c) == 0 {
		return ""
	}
	var out pen
	for i, q := range c {
		x, y := tenths(q[0]*p.perM), tenths(p.h-q[1]*p.perM)
		if i == 0 {
			out.move(x, y)
		} else {
			out.line(x, y)
		}
	}
	out.close()
	return out.String()
}

// freeWordSize is the size of the word on free ground [px].
const freeWordSize = 14

// word sets the word in the middle of a piece where it has room, upright or along
// it, and not over another.
func (p *freePlan) word(c corners, word string) {
	left, top, right, bottom := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range c {
		x, y := q[0]*p.perM, p.h-q[1]*p.perM
		left, right, top, bottom = min(left, x), max(right, x), min(top, y), max(bottom, y)
	}
	x, y, long := (left+right)/2, (top+bottom)/2, widthOf(word, freeWordSize)
	across := right-left >= long+4 && bottom-top >= freeWordSize
	along := bottom-top >= long+4 && right-left >= freeWordSize
	if !across && !along {
		return
	}
	box := []float64{x - long/2, y - freeWordSize/2, x + long/2, y + freeWordSize/2}
	turn := ""
	if !across {
		box = []float64{x - freeWordSize/2, y - long/2, x + freeWordSize/2, y + long/2}
		turn = ` transform="rotate(-90 ` + px(x) + " " + px(y) + `)"`
	}
	for _, n := range p.named {
		if box[0] < n[2] && n[0] < box[2] && box[1] < n[3] && n[1] < box[3] {
			return
		}
	}
	p.named = append(p.named, box)
	p.WriteString(`<text class="free mid" x="` + px(x) + `" y="` + px(y+4.5) + `"` + turn + `>` + html.EscapeString(word) + `</text>`)
}

// scale sets a length of the plan under it, in metres.
func (p *freePlan) scale(metres func(float64) string) {
	to := p.site.PlanWidthM * p.perM
	long := 1.0
	for _, m := range []float64{2, 5, 10, 20, 50} {
		if m*p.perM < to/4 {
			long = m
		}
	}
	y, from := p.h+10, to-long*p.perM
	p.path("free-plan-scale", "M"+px(from)+" "+px(y-4)+"v8M"+px(from)+" "+px(y)+"H"+px(to-.5)+"M"+px(to-.5)+" "+px(y-4)+"v8")
	if metres != nil {
		p.text("end t-ink", from-7, y+4.5, metres(long))
	}
}
