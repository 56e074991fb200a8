package draw

import (
	"html"

	"garner/internal/desk"
	"garner/internal/place"
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
	toScale
	site  *desk.SiteSpace
	w, h  float64 // [px]
	beds  []taken
	names []string // of the beds
	set   []taken  // round the words that are set
}

// bedNames sets the name of each bed above it, beneath or beside it, where there is
// room.
func (p *freePlan) bedNames() {
	for i, b := range p.beds {
		long := widthOf(p.names[i], labelSize)
		for _, at := range []taken{
			{b.left, b.top - 14, b.left + long, b.top - 2},
			{b.left, b.bottom + 2, b.left + long, b.bottom + 14},
			{b.right + 4, (b.top+b.bottom)/2 - 6, b.right + 4 + long, (b.top+b.bottom)/2 + 6},
			{b.left - long - 4, (b.top+b.bottom)/2 - 6, b.left - 4, (b.top+b.bottom)/2 + 6},
		} {
			if at.left < 0 || at.top < 0 || at.right > p.w || at.bottom > p.h || at.meetsAny(p.beds) || at.meetsAny(p.set) {
				continue
			}
			p.set = append(p.set, at)
			p.text("t-ink halo free-plan-name", at.left, at.bottom-1.5, p.names[i])
			break
		}
	}
}

// FreePlan draws a site's beds to scale and, dashed, the ground of them that comes
// free. It is empty when no plan of the site is drawn.
func FreePlan(v *desk.SpaceView, site *desk.SiteSpace, o FreePlanOptions) string {
	if site.PlanWidthM <= 0 || site.PlanDepthM <= 0 {
		return ""
	}
	p := &freePlan{site: site}
	p.perM = min(o.WidthPX/site.PlanWidthM, o.HeightPX/site.PlanDepthM)
	p.w, p.h = site.PlanWidthM*p.perM, site.PlanDepthM*p.perM
	p.foot = p.h
	p.frame("free-plan", "img", o.Label, p.w, p.h+freePlanFoot, false)
	p.rect("free-plan-ground", .8, .8, p.w-1.6, p.h-1.6)
	for i := range site.Features {
		p.path("free-plan-feature", p.outline(site.Features[i].Corners()))
	}
	for i := range v.Beds {
		if b := &v.Beds[i]; b.Site == site.ID && b.At.IsSet() {
			c := b.Corners()
			p.path("free-plan-bed", p.outline(c))
			p.beds, p.names = append(p.beds, p.bounds(c)), append(p.names, b.Name)
		}
	}
	p.pieces(v, o.Free)
	p.bedNames()
	p.bar(p.toScale, scaleBar{class: "free-plan-scale", to: p.w - .5, y: p.h + 10, tick: 8, most: p.w / 4, metres: o.Metres})
	return p.done()
}

// freePlanFoot is the room under the plan for its scale [px].
const freePlanFoot = 24

// pieces draws the free ground: outlines first, so that no line runs over a word.
func (p *freePlan) pieces(v *desk.SpaceView, word string) {
	var all [][]place.Point
	for i := range v.Beds {
		for k := range v.Free {
			if b, f := &v.Beds[i], &v.Free[k]; b.Site == p.site.ID && f.Bed == b.ID && len(f.Corners) > 0 {
				all = append(all, f.Corners)
				p.path("free-plan-free", p.outline(f.Corners))
			}
		}
	}
	for _, c := range all {
		p.word(c, word)
	}
}

// freeWordSize is the size of the word on free ground [px].
const freeWordSize = 14

// word sets the word in the middle of a piece where it has room, upright or along
// it, and not over another.
func (p *freePlan) word(c []place.Point, word string) {
	b := p.bounds(c)
	x, y, long := (b.left+b.right)/2, (b.top+b.bottom)/2, widthOf(word, freeWordSize)
	across := b.right-b.left >= long+4 && b.bottom-b.top >= freeWordSize
	along := b.bottom-b.top >= long+4 && b.right-b.left >= freeWordSize
	if !across && !along {
		return
	}
	at, turn := taken{x - long/2, y - freeWordSize/2, x + long/2, y + freeWordSize/2}, ""
	if !across {
		at = taken{x - freeWordSize/2, y - long/2, x + freeWordSize/2, y + long/2}
		turn = ` transform="rotate(-90 ` + px(x) + " " + px(y) + `)"`
	}
	if at.meetsAny(p.set) {
		return
	}
	p.set = append(p.set, at)
	p.WriteString(`<text class="free mid" x="` + px(x) + `" y="` + px(y+4.5) + `"` + turn + `>` + html.EscapeString(word) + `</text>`)
}
