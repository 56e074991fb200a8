package draw

import (
	"html"
	"math"
	"strconv"

	"garner/internal/place"
)

// SiteThing is a thing on a site's drawing: a bed, or what stands beside the beds.
type SiteThing struct {
	Class   string // look, such as bed, wall or path
	Label   string // what it is, in text
	Path    string // where choosing it leads
	Data    []string
	Chosen  bool
	At      place.Spot
	LengthM float64
	WidthM  float64
	Corners []place.Point
	Trunk   bool     // it has a stem in its middle
	Names   []string // its name, the longest first; what finds no room is left out
	Size    []string // a second line under the name, likewise
}

// SiteOptions say how a site is drawn.
type SiteOptions struct {
	WidthPX  float64 // at most, at a zoom of 1
	HeightPX float64 // at most, at a zoom of 1
	Zoom     float64
	Label    string
	Data     []string
	North    string
	Metres   func(m float64) string
}

// Room round the plan itself [px].
const (
	siteEdge = 44.0
	siteFoot = 52.0 // below it, for the scale and the arrow
)

// siteDrawing is a site being drawn.
type siteDrawing struct {
	sheet
	toScale
	site    place.Site
	options *SiteOptions
	w, h    float64      // of the plan itself [px]
	beside  []*SiteThing // whose names find no room in them
}

// SiteScale is the scale at which a site is drawn [px/m].
func SiteScale(site place.Site, o SiteOptions) float64 {
	if site.PlanWidthM <= 0 || site.PlanDepthM <= 0 {
		return 0
	}
	return math.Min(o.WidthPX/site.PlanWidthM, o.HeightPX/site.PlanDepthM) * math.Max(1, o.Zoom)
}

// SiteDrawing draws a site to scale with all things on it, each a link that
// chooses it. A site without a size is drawn as nothing.
func SiteDrawing(site place.Site, things []SiteThing, o SiteOptions) string {
	d := &siteDrawing{site: site, options: &o}
	if d.perM = SiteScale(site, o); d.perM == 0 {
		return ""
	}
	d.w, d.h = site.PlanWidthM*d.perM, site.PlanDepthM*d.perM
	d.left, d.foot = siteEdge, siteEdge+d.h
	w, h := d.w+2*siteEdge, d.h+siteEdge+siteFoot
	d.WriteString(`<svg` + attributes(append([]string{"xmlns", "http://www.w3.org/2000/svg", "class", "site", "role", "group", "aria-label", o.Label,
		"width", px(w), "height", px(h), "viewBox", "0 0 " + px(w) + " " + px(h),
		"data-scale", decimals(d.perM), "data-left", decimals(d.left), "data-foot", decimals(d.foot)}, o.Data...)...) + `>`)
	d.WriteString(`<defs>`)
	pattern(&d.Builder, "leafy", 9, 8, "", `<path class="site-leaf" d="M0 4q2.2 -4 4.5 0M4.5 8q2.2 -4 4.5 0"/>`)
	d.WriteString(`</defs>`)
	d.rect("site-ground", siteEdge, siteEdge, d.w, d.h)
	d.grid()
	for i := range things {
		d.thing(&things[i])
	}
	d.path("site-edge", around(siteEdge, siteEdge, d.w, d.h))
	d.names(things)
	d.north()
	d.bar(d.toScale, scaleBar{class: "site-bar", to: d.left + d.w, y: d.foot + 24, tick: 10, most: d.w / 3, metres: o.Metres})
	d.WriteString(`<g class="site-rings"></g>`)
	return d.done()
}

// around is a path round an upright box.
func around(x, y, w, h float64) string {
	return "M" + px(x) + " " + px(y) + "h" + px(w) + "v" + px(h) + "h" + px(-w) + "z"
}

// decimals writes a number for the script to read.
func decimals(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// leastSquare is the least side of a square of the grid that is drawn [px].
const leastSquare = 9

// grid draws a hairline every metre, or every ten where metres are too close.
func (d *siteDrawing) grid() {
	step := 1.0
	for step*d.perM < leastSquare {
		step *= 10
	}
	lines := ""
	for x := step; x < d.site.PlanWidthM-1e-6; x += step {
		lines += "M" + px(siteEdge+x*d.perM) + " " + px(siteEdge) + "v" + px(d.h)
	}
	for y := step; y < d.site.PlanDepthM-1e-6; y += step {
		lines += "M" + px(siteEdge) + " " + px(siteEdge+d.h-y*d.perM) + "h" + px(d.w)
	}
	d.path("site-grid", lines)
}

// thing draws one thing as a link.
func (d *siteDrawing) thing(t *SiteThing) {
	class := "thing thing-" + t.Class
	if t.Chosen {
		class += " chosen"
	}
	pairs := []string{"class", class, "href", t.Path, "aria-label", t.Label}
	if t.Chosen {
		pairs = append(pairs, "aria-current", "true")
	}
	d.WriteString(`<a` + attributes(append(pairs, t.Data...)...) + `>`)
	shape := d.outline(t.Corners)
	d.path("reach", shape)
	d.path("shape", shape)
	x, y := d.at(place.Point{X: t.At.XM, Y: t.At.YM})
	if t.Trunk {
		d.WriteString(`<circle class="reach" cx="` + px(x) + `" cy="` + px(y) + `" r="15"/><circle class="trunk" cx="` + px(x) + `" cy="` + px(y) + `" r="4"/>`)
	}
	d.label(t)
	d.WriteString(`</a>`)
}

// north is an arrow below the plan, turned to where north lies on the paper.
func (d *siteDrawing) north() {
	d.WriteString(`<g class="site-north" transform="translate(` + px(siteEdge+16) + " " + px(siteEdge+d.h+28) + `)">`)
	d.WriteString(`<path class="arrow" transform="rotate(` + px(-d.site.UpDeg) + `)" d="` + northArrow(14, 15, 10) + `"/>`)
	d.text("t-ink", 24, 5, d.options.North)
	d.WriteString(`</g>`)
}

// turned is a transform that sets what is drawn about a point, turned clockwise.
func turned(x, y, degrees float64) string {
	out := "translate(" + px(x) + " " + px(y) + ")"
	if math.Abs(degrees) > 0.05 {
		out += " rotate(" + px(degrees) + ")"
	}
	return html.EscapeString(out)
}
