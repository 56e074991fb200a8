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
	toScale
	view    *desk.ShadeView
	options *LightMapOptions
	w, h    float64 // [px]
	taken   []taken // where words and beds stand
}

// LightMap draws a site to scale with its light in a month: tones parted by
// labelled lines, what throws the shade, and the beds. Nothing without a plan.
func LightMap(v *desk.ShadeView, o LightMapOptions) string {
	if len(v.Map.Light) == 0 {
		return ""
	}
	m := &lightMap{view: v, options: &o}
	m.perM = o.WidthPX / v.Map.WidthM
	m.w, m.h = v.Map.WidthM*m.perM, v.Map.DepthM*m.perM
	m.foot = m.h
	m.frame("light-map", "img", o.Label, m.w, m.h+mapFoot, false)
	m.rect("lit0", 0, 0, m.w, m.h)
	f := fieldOf(v, m.perM)
	lines := m.tones(f)
	m.WriteString(`<svg` + attributes("class", "light-inside", "width", px(m.w), "height", px(m.h)) + `>`)
	for i := range v.Features {
		f := &v.Features[i]
		m.feature(m.toScale, &f.Feature, lightLook, f.Bare)
	}
	m.WriteString(`</svg>`)
	for i := range v.Beds {
		m.path("light-bed", m.outline(v.Beds[i].Corners()))
	}
	m.rect("light-edge", 0, 0, m.w, m.h)
	for i := range v.Features {
		if f := &v.Features[i]; !f.Tree() && f.Kind != place.Path {
			m.taken = append(m.taken, m.bounds(f.Corners()))
		}
	}
	for i := range v.Beds {
		m.taken = append(m.taken, m.bounds(v.Beds[i].Corners()))
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
	m.bar(m.toScale, scaleBar{class: "light-bar", to: m.w - 1, y: m.h + 12, tick: 8, most: m.w / 4, metres: o.Metres})
	return m.done()
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

// lightLook is the look of what throws the shade.
var lightLook = featureLook{path: "light-path", crown: "light-crown", building: "light-building", wall: "ground"}

// north is an arrow in a corner of the map, one where nothing stands if there is
// one.
func (m *lightMap) north() {
	const half, in = 24.0, 28.0
	x, y := m.w-in, m.h-in
	for _, at := range [][2]float64{{x, y}, {in, y}, {x, in}, {in, in}} {
		if room := (taken{at[0] - half, at[1] - half, at[0] + half, at[1] + half}); !room.meetsAny(m.taken) {
			x, y = at[0], at[1]
			break
		}
	}
	m.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `)"><circle class="plate" cx="0" cy="0" r="23"/><g transform="rotate(` + px(-m.view.Site.UpDeg) + `)">`)
	m.path("light-north", northArrow(18, 10, 9))
	m.text("mid t-ink b f12", 0, -12, m.options.North)
	m.WriteString(`</g></g>`)
	m.taken = append(m.taken, taken{x - half, y - half, x + half, y + half})
}
