package draw

import (
	"html"
	"math"
	"strings"

	"garner/internal/desk"
	"garner/internal/place"
)

// Room about words on the map [px].
const (
	nameInset = 4.0
	nameLine  = 14.0
)

// bedName names a bed and its light within its outline, along it where it stands
// upright; in two lines where one is too long.
func (m *lightMap) bedName(b *desk.ShadedBed) {
	box := m.bounds(b.Corners())
	long, high, turn := b.LengthM*m.perM, b.WidthM*m.perM, math.Remainder(b.At.TurnDeg, 180)
	if high > long {
		long, high, turn = high, long, math.Remainder(turn+90, 180)
	}
	x, y := m.at(place.Point{X: b.At.XM, Y: b.At.YM})
	for _, words := range m.options.Bed(b) {
		lines := split(words)
		fits := high >= nameLine*float64(len(lines))
		for _, l := range lines {
			fits = fits && semiBold*widthOf(l, labelSize)+2*nameInset <= long
		}
		if !fits {
			continue
		}
		m.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `) rotate(` + px(-turn) + `)">`)
		for i, l := range lines {
			m.text("mid t-ink b halo", 0, 4.5+nameLine*(float64(i)-float64(len(lines)-1)/2), l)
		}
		m.WriteString(`</g>`)
		if l := lines[0]; l == m.options.Percent(b.Light[m.view.Month-1]) {
			m.nameBelow(box, b.Name)
		}
		return
	}
}

// widestBelow is how wide a name beneath its bed may run before it is broken [px].
const widestBelow = 96.0

// nameBelow sets a name that has no room in its bed beneath it, where that is
// free.
func (m *lightMap) nameBelow(box taken, name string) {
	lines := []string{""}
	for _, word := range strings.Fields(name) {
		last := &lines[len(lines)-1]
		if *last != "" && widthOf(*last+" "+word, labelSize) > widestBelow {
			lines = append(lines, word)
			continue
		}
		*last = strings.TrimSpace(*last + " " + word)
	}
	widest := 0.0
	for _, l := range lines {
		widest = max(widest, widthOf(l, labelSize)/2)
	}
	x := (box.left + box.right) / 2
	room := taken{x - widest, box.bottom + 2, x + widest, box.bottom + 4 + nameLine*float64(len(lines))}
	if room.left < 0 || room.right > m.w || room.bottom > m.h || room.meetsAny(m.taken) {
		return
	}
	m.WriteString(`<text class="mid t-ink halo">`)
	for i, l := range lines {
		m.WriteString(`<tspan` + attributes("x", px(x), "y", px(box.bottom+nameLine*float64(i+1))) + `>` + html.EscapeString(l) + ` </tspan>`)
	}
	m.WriteString(`</text>`)
	m.taken = append(m.taken, room)
}

// split parts words at the mark for a new line.
func split(words string) []string {
	for i, r := range words {
		if r == '\n' {
			return []string{words[:i], words[i+1:]}
		}
	}
	return []string{words}
}

// featureName names what stands round the beds: in it along its length, else
// beside it where nothing else is written.
func (m *lightMap) featureName(f *desk.ShadeFeature) {
	box := m.bounds(f.Corners())
	box = taken{max(0, box.left), max(0, box.top), min(m.w, box.right), min(m.h, box.bottom)}
	if box.left >= box.right || box.top >= box.bottom {
		return
	}
	inside := "mid t-ink halo"
	if f.Kind != place.Building && !f.Tree() && f.Kind != place.Path {
		inside = "mid t-on m" // upon a solid
	}
	x, y, w, h := (box.left+box.right)/2, (box.top+box.bottom)/2, box.right-box.left, box.bottom-box.top
	for _, words := range m.options.Feature(f) {
		long := widthOf(words, labelSize) + 2*nameInset
		kept := max(long/2, min(m.w-long/2, x))
		switch {
		case f.Tree():
			if m.beside(kept, min(m.h-6, y+20), words) {
				return
			}
		case long <= w && h >= 14:
			m.place(inside, x, y+4.5, words, 0)
			return
		case long <= h && w >= 14:
			m.place(inside, x+4.5, y, words, -90)
			return
		case f.Kind != place.Path && (m.beside(kept, box.bottom+14, words) || m.beside(kept, box.top-6, words)):
			return
		}
	}
}

// beside sets words about their middle where nothing else is written.
func (m *lightMap) beside(x, y float64, words string) bool {
	half := widthOf(words, labelSize) / 2
	room := taken{x - half, y - 11, x + half, y + 3}
	if room.top < 0 || room.bottom > m.h || room.meetsAny(m.taken) {
		return false
	}
	m.place("mid t-ink halo", x, y, words, 0)
	return true
}

// place sets words about their middle and keeps their room.
func (m *lightMap) place(class string, x, y float64, words string, turn float64) {
	half := widthOf(words, labelSize) / 2
	if turn != 0 {
		m.WriteString(`<g transform="translate(` + px(x) + " " + px(y) + `) rotate(` + px(turn) + `)">`)
		m.text(class, 0, 0, words)
		m.WriteString(`</g>`)
		m.taken = append(m.taken, taken{x - 12, y - half, x + 4, y + half})
		return
	}
	m.text(class, x, y, words)
	m.taken = append(m.taken, taken{x - half, y - 12, x + half, y + 4})
}

// How many times a line is labelled, how far apart, and how short a line goes
// without [px].
const (
	mostLevelNames = 2
	levelNamesGap  = 140.0
	leastNamed     = 40.0
)

// levelNames labels the lines of a level, clear of all other words, the longest
// lines first.
func (m *lightMap) levelNames(loops [][]spot, words string) {
	half := widthOf(words, labelSize)/2 + 2
	named := 0
	var at []spot
	for named < mostLevelNames {
		best, found := 0.0, spot{}
		for _, loop := range loops {
			if length := lengthOf(loop); length > best && length >= leastNamed {
				if s, ok := m.clear(loop, half, at); ok {
					best, found = length, s
				}
			}
		}
		if best == 0 {
			return
		}
		m.text("mid t-ink halo", found.x, found.y+4.5, words)
		m.taken = append(m.taken, taken{found.x - half, found.y - 9, found.x + half, found.y + 9})
		at = append(at, found)
		named++
	}
}

// clear finds a place on a line where words stand free, far from the same words
// elsewhere.
func (m *lightMap) clear(loop []spot, half float64, others []spot) (spot, bool) {
	for i := range loop {
		s := loop[(i*7+len(loop)/3)%len(loop)] // not one after the other: a place in the open comes sooner
		box := taken{s.x - half, s.y - 9, s.x + half, s.y + 9}
		if s.edge || box.left < 2 || box.top < 2 || box.right > m.w-2 || box.bottom > m.h-2 {
			continue
		}
		free := !box.meetsAny(m.taken)
		for _, o := range others {
			free = free && math.Hypot(o.x-s.x, o.y-s.y) > levelNamesGap
		}
		if free {
			return s, true
		}
	}
	return spot{}, false
}

func lengthOf(loop []spot) float64 {
	sum := 0.0
	for i := 1; i < len(loop); i++ {
		if !loop[i].edge || !loop[i-1].edge {
			sum += math.Hypot(loop[i].x-loop[i-1].x, loop[i].y-loop[i-1].y)
		}
	}
	return sum
}
