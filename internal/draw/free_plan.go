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
	perM  float64 // [px/m]
	h     float64 // [px]
	beds  []planBox
	names []string  // of the beds
	set   []planBox // round the words that are set
}

// planBox is an upright rectangle on the drawing [px].
type planBox struct{ left, top, right, bottom float64 }

func (b planBox) meets(o planBox) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

func (b planBox) meetsAny(others []planBox) bool {
	for _, o := range others {
		if b.meets(o) {
			return true
		}
	}
	return false
}

// box is the upright rectangle about corners.
func (p *freePlan) box(c corners) planBox {
	b := planBox{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range c {
		x, y := q[0]*p.perM, p.h-q[1]*p.perM
		b.left, b.right, b.top, b.bottom = min(b.left, x), max(b.right, x), min(b.top, y), max(b.bottom, y)
	}
	return b
}

// bedNames sets the name of each bed above it, beneath or beside it, where there is
// room.
func (p *freePlan) bedNames() {
	for i, b := range p.beds {
		long := widthOf(p.names[i], labelSize)
		for _, at := range []planBox{
			{b.left, b.top - 14, b.left + long, b.top - 2},
			{b.left, b.bottom + 2, b.left + long, b.bottom + 14},
			{b.right + 4, (b.top+b.bottom)/2 - 6, b.right + 4 + long, (b.top+b.bottom)/2 + 6},
			{b.left - long - 4, (b.top+b.bottom)/2 - 6, b.left - 4, (b.top+b.bottom)/2 + 6},
		} {
			if at.left < 0 || at.top < 0 || at.right > p.site.PlanWidthM*p.perM || at.bottom > p.h || at.meetsAny(p.beds) || at.meetsAny(p.set) {
				continue
			}
			p.set = append(p.set, at)
			p.text("t-ink halo free-plan-name", at.left, at.bottom-1.5, p.names[i])
			break
		}
	}
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
	p.rect("free-plan-ground", .8, .8, site.PlanWidthM*p.perM-1.6, p.h-1.6)
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
			p.beds, p.names = append(p.beds, p.box(c)), append(p.names, b.Name)
		}
	}
	p.pieces(v, o.Free)
	p.bedNames()
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
	b := p.box(c)
	x, y, long := (b.left+b.right)/2, (b.top+b.bottom)/2, widthOf(word, freeWordSize)
	across := b.right-b.left >= long+4 && b.bottom-b.top >= freeWordSize
	along := b.bottom-b.top >= long+4 && b.right-b.left >= freeWordSize
	if !across && !along {
		return
	}
	at, turn := planBox{x - long/2, y - freeWordSize/2, x + long/2, y + freeWordSize/2}, ""
	if !across {
		at = planBox{x - freeWordSize/2, y - long/2, x + freeWordSize/2, y + long/2}
		turn = ` transform="rotate(-90 ` + px(x) + " " + px(y) + `)"`
	}
	if at.meetsAny(p.set) {
		return
	}
	p.set = append(p.set, at)
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
