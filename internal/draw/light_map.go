package draw

import (
	"garner/internal/desk"
	"garner/internal/place"
)

// LightMapOptions say how the light on a site is drawn. Functions give words, the
// longest first; what does not fit is left out.
type LightMapOptions struct {
	WidthPX float64
	Label   string // what it shows, in text
	Percent func(share float64) string
	Bed     func(b *desk.ShadedBed) []string // name and light, as long as there is room
	Feature func(f *desk.ShadeFeature) []string
	Metres  func(m float64) string
	North   string
}

// lightLevels part the tones, from full light to deep shade.
var lightLevels = []float64{0.9, 0.75, 0.6, 0.4}

// mapFoot is the room under the map for its scale [px].
const mapFoot = 26.0

// lightMap is a map being drawn.
type lightMap struct {
	sheet
	view    *desk.ShadeView
	options *LightMapOptions
	perM    float64 // [px/m]
	w, h    float64 // [px]
	taken   []taken // where words and beds stand
}

// taken is a box on the drawing [px].
type taken struct{ left, top, right, bottom float64 }

func (t taken) meets(o taken) bool {
	return t.left < o.right && o.left < t.right && t.top < o.bottom && o.top < t.bottom
}

// LightMap draws a site to scale with its light in a month: tones parted by
// labelled lines, what throws the shade, and the beds. Nothing without a plan.
func LightMap(v *desk.ShadeView, o LightMapOptions) string {
	if len(v.Map.Light) == 0 {
		return ""
	}
	m := &lightMap{view: v, options: &o, perM: o.WidthPX / v.Map.WidthM}
	m.w, m.h = v.Map.WidthM*m.perM, v.Map.DepthM*m.perM
	m.frame("light-map", "img", o.Label, m.w, m.h+mapFoot, false)
	m.rect("lit0", 0, 0, m.w, m.h)
	f := fieldOf(v, m.perM)
	lines := m.tones(f)
	m.WriteString(`<svg` + attributes("class", "light-inside", "width", px(m.w), "height", px(m.h)) + `>`)
	for i := range v.Features {
		m.feature(&v.Features[i])
	}
	m.WriteString(`</svg>`)
	for i := range v.Beds {
		m.path("light-bed", m.outline(v.Beds[i].Corners()))
	}
	m.rect("light-edge", 0, 0, m.w, m.h)
	for i := range v.Features {
		if f := &v.Features[i]; !f.Tree() && f.Kind != place.Path {
			m.taken = append(m.taken, m.boundsOf(f.Corners()))
		}
	}
	for i := range v.Beds {
		m.taken = append(m.taken, m.boundsOf(v.Beds[i].Corners()))
	}
	m.north()
	for i := range v.Beds {
		m.bedName(&v.Beds[i])
	}
	for i := range v.Features {
		m.featureName(&v.Features[i])
	}
	for k, loops := range lines {
		m.levelNames(loops, o.Percent(lightLevels[k]))
	}
	m.bar()
	return m.done()
}

// LightUnder is the light of a month as tones and lines alone, to lie under
// another drawing of the same plan with so many pixels a metre.
func LightUnder(v *desk.ShadeView, perM float64) string {
	if len(v.Map.Light) == 0 {
		return ""
	}
	m := &lightMap{view: v, perM: perM}
	m.tones(fieldOf(v, perM))
	return m.String()
}

// tones fills what lies below each level, the lighter first, and draws the lines
// between them.
func (m *lightMap) tones(f *field) [][][]spot {
	lines := make([][][]spot, len(lightLevels))
	for k, level := range lightLevels {
		lines[k] = f.loops(level)
		m.path("lit"+whole(k+1), area(lines[k]))
	}
	for _, loops := range lines {
		m.path("light-line", line(loops))
	}
	return lines
}

// at is where a point of the plan lies [px].
func (m *lightMap) at(p place.Point) (x, y float64) { return p.X * m.perM, m.h - p.Y*m.perM }

// outline is the path round corners of the plan.
func (m *lightMap) outline(corners []place.Point) string {
	var out pen
	for i, q := range corners {
		x, y := m.at(q)
		if i == 0 {
			out.move(tenths(x), tenths(y))
		} else {
			out.line(tenths(x), tenths(y))
		}
	}
	out.close()
	return out.String()
}

// feature draws one thing beside the beds.
func (m *lightMap) feature(f *desk.ShadeFeature) {
	d := m.outline(f.Corners())
	switch {
	case f.Kind == place.Path:
		m.path("light-path", d)
	case f.Tree():
		class := "light-crown"
		if f.Bare {
			class += " bare"
		}
		m.path(class, d)
		x, y := m.at(place.Point{X: f.At.XM, Y: f.At.YM})
		m.WriteString(`<circle class="p-ink" cx="` + px(x) + `" cy="` + px(y) + `" r="4"/>`)
	case f.Kind == place.Building:
		m.path("light-building", d)
	default:
		m.path("ground", d)
	}
}

// north is an arrow in a corner of the map, one where nothing stands if there is
// one.
func (m *lightMap) north() {
	const half, in = 24.0, 28.0
	x, y := m.w-in, m.h-in
	for _, at := range [][2]float64{{x, y}, {in, y}, {x, in}, {in, in}} {
		room, free := taken{at[0] - half, at[1] - half, at[0] + half, at[1] + half}, true
		for _, t := range m.taken {
			free = free && !t.meets(room)
		}
		if free {
			x, y = at[0], at[1]
			break
		}
	}
	m.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `)"><circle class="plate" cx="0" cy="0" r="23"/><g transform="rotate(` + px(-m.view.Site.UpDeg) + `)">`)
	m.path("light-north", "M0 18V-9M-5 -1L0 -10L5 -1")
	m.text("mid t-ink b f12", 0, -12, m.options.North)
	m.WriteString(`</g></g>`)
	m.taken = append(m.taken, taken{x - half, y - half, x + half, y + half})
}

// bar is a length of the plan, in metres.
func (m *lightMap) bar() {
	long := 1.0
	for _, length := range []float64{2, 5, 10, 20, 50, 100} {
		if length*m.perM < m.w/4 {
			long = length
		}
	}
	y, to := m.h+12, m.w-1
	from := to - long*m.perM
	m.path("light-bar", "M"+px(from)+" "+px(y-4)+"v8M"+px(from)+" "+px(y)+"h"+px(to-from)+"M"+px(to)+" "+px(y-4)+"v8")
	m.text("end t-ink", from-7, y+4.5, m.options.Metres(long))
}
