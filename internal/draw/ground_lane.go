package draw

import "garner/internal/desk"

// BedLaneOptions say how a bed's year is drawn. Functions give words, the longest
// first; what does not fit is left out.
type BedLaneOptions struct {
	HeightPX float64 // of the whole bed
	Label    string  // what it shows, in text
	Names    func(h *desk.HeldGround) []string
	Title    func(h *desk.HeldGround) string // all of it, for who points at it
	Free     func(f desk.FreeStretch) []string
	Cover    func(c *desk.CoverTime) string
	Ring     func(h *desk.HeldGround) (label, date string)
	StepM2   float64         // by how much a planting is made larger
	Tried    map[string]bool // plantings that are being tried
	Tab      bool            // its rings are reached by Tab
}

// Heights of a bed's lane beside the bed itself [px].
const (
	laneAir   = 7.0
	coverBand = 13.0
	underAir  = 3.0
	laneFoot  = 6.0
)

// bedLane is a bed's year being drawn.
type bedLane struct {
	sheet
	bed     *desk.BedYear
	options *BedLaneOptions
	scale   Scale
	base    float64 // the lane's line [px]
	height  float64
	labels  plates
}

// BedLane draws a bed's year: a silhouette of leaf for each planting, as thick as
// its part of the bed, solid while it is picked; what grows under another hangs
// below the line.
func BedLane(b *desk.BedYear, s Scale, o BedLaneOptions) string {
	l := &bedLane{bed: b, options: &o, scale: s}
	top := laneAir
	if l.hasCovers() {
		top += coverBand
	}
	l.base = top + o.HeightPX
	l.height = l.base + l.underDepth() + laneFoot
	l.frame("bed-lane", "group", o.Label, s.WidthPX, l.height, false)
	l.path("month", monthLines(s, 0, l.height))
	l.level("hair", 0, s.WidthPX, l.base+.5)
	for i := range b.Free {
		l.free(&b.Free[i])
	}
	for i := range b.Held {
		l.held(&b.Held[i])
	}
	l.covers()
	l.wrongs()
	for i := range b.Held {
		l.name(&b.Held[i])
	}
	for i := range b.Free {
		l.freeWords(&b.Free[i])
	}
	for i := range b.Held {
		l.ring(&b.Held[i])
	}
	return l.done()
}

// underDepth is how far plantings hang below the line [px].
func (l *bedLane) underDepth() float64 {
	deepest := 0.0
	for i := range l.bed.Held {
		if h := &l.bed.Held[i]; h.Leans() {
			deepest = max(deepest, underAir+l.thick(h.Share))
		}
	}
	return deepest
}

// leastThick is how thick the lane of the smallest planting is [px].
const leastThick = 4.0

// thick is how thick a part of the bed is [px].
func (l *bedLane) thick(share float64) float64 {
	return max(leastThick, share*l.options.HeightPX)
}

// main is the largest piece of the bed that a planting has.
func (l *bedLane) main(h *desk.HeldGround) desk.BedPiece {
	var most desk.BedPiece
	for _, p := range l.pieces(h) {
		if p.Share > most.Share {
			most = p
		}
	}
	return most
}

// pieces are where a planting lies: all in one where it hangs below the line.
func (l *bedLane) pieces(h *desk.HeldGround) []desk.BedPiece {
	if h.Leans() {
		return []desk.BedPiece{{Share: h.Share}}
	}
	return h.Pieces
}

// thickness is the thickness of a planting's largest piece [px].
func (l *bedLane) thickness(h *desk.HeldGround) float64 { return l.thick(l.main(h).Share) }

// ground is the line a planting's largest piece stands on, or hangs from [px].
func (l *bedLane) ground(h *desk.HeldGround) float64 { return l.groundOf(h, l.main(h)) }

func (l *bedLane) groundOf(h *desk.HeldGround, p desk.BedPiece) float64 {
	if h.Leans() {
		return l.base + underAir
	}
	return l.base - p.At*l.options.HeightPX
}

// span is from where to where a planting holds its ground [px].
func (l *bedLane) span(h *desk.HeldGround) (from, to float64) {
	to = l.scale.WidthPX
	if !h.Stays && h.Clear.P50.IsSet() {
		to = l.scale.X(h.Clear.P50)
	}
	return l.scale.X(h.From), to
}

func (l *bedLane) held(h *desk.HeldGround) {
	for _, p := range l.pieces(h) {
		l.piece(h, p)
	}
}

func (l *bedLane) piece(h *desk.HeldGround, p desk.BedPiece) {
	y := l.groundOf(h, p)
	own := &lane{view: &h.PlantingLine, scale: l.scale, n: max(len(h.Leaf), len(h.Picked)), full: tenths(l.thick(p.Share)), base: tenths(y)}
	own.x = l.scale.steps(own.n)
	class, solid, line := "leaf", "ground", "line"
	if l.options.Tried[h.ID] {
		class, solid, line = "leaf tried", "draft", "pen today"
	}
	l.WriteString(`<g`)
	if h.Leans() {
		// Mirrored, so that it hangs from the line.
		l.WriteString(attributes("transform", "matrix(1 0 0 -1 0 "+px(2*y)+")"))
		class, line = class+" under", line+" dotted"
		if solid == "ground" {
			solid = "over"
		}
	}
	l.WriteString(`>`)
	if l.options.Title != nil {
		l.WriteString(`<title>` + escaped(l.options.Title(h)) + `</title>`)
	}
	l.path(class, own.silhouette())
	l.path(solid, own.picked())
	if from, to := l.span(h); to > from {
		l.level(line, from, to, y)
	}
	l.WriteString(`</g>`)
}

// free is ground that nothing holds: a dashed outline along its foot.
func (l *bedLane) free(f *desk.FreeStretch) {
	from, to := l.freeSpan(f)
	if f.Share < leastFreeShare/2 || to-from < 24 {
		return
	}
	y := l.base - f.At*l.options.HeightPX
	l.level("thin dashed", from+1, to-1, y)
}

func (l *bedLane) freeSpan(f *desk.FreeStretch) (from, to float64) {
	to = l.scale.WidthPX
	if f.Until.IsSet() {
		to = l.scale.X(f.Until)
	}
	return l.scale.X(f.From), to
}

// hasCovers tells whether a cover goes on or comes off within the year. One that
// is always there is told beside the bed's name.
func (l *bedLane) hasCovers() bool {
	for i := range l.bed.Covers {
		if l.comesAndGoes(&l.bed.Covers[i]) {
			return true
		}
	}
	return false
}

func (l *bedLane) comesAndGoes(c *desk.CoverTime) bool {
	return l.scale.has(c.On) || c.Off.IsSet() && l.scale.has(c.Off)
}

// covers are thin lines above the lane, named.
func (l *bedLane) covers() {
	y := laneAir + coverBand - 7
	for i := range l.bed.Covers {
		c := &l.bed.Covers[i]
		if !l.comesAndGoes(c) {
			continue
		}
		from, to := l.scale.X(c.On), l.scale.WidthPX
		if c.Off.IsSet() {
			to = l.scale.X(c.Off)
		}
		l.path("thin", "M"+px(from)+" "+px(y+4)+"v-4h"+px(to-from)+"v4")
		if l.options.Cover != nil {
			l.label("f12 halo", from+4, y-2.5, 12, l.options.Cover(c))
		}
	}
}

// wrongs underline the time in which plantings hold more than there is.
func (l *bedLane) wrongs() {
	for _, w := range l.bed.Wrong {
		from, to := l.scale.X(w.From), l.scale.X(w.Until)
		l.level("pen", from, max(to, from+6), l.base+3)
	}
}

// ring stands at the date of a planting that can be moved.
func (l *bedLane) ring(h *desk.HeldGround) {
	if l.options.Ring == nil || !h.Movable || !l.scale.has(h.Date) {
		return
	}
	label, date := l.options.Ring(h)
	tab := "-1"
	if l.options.Tab {
		tab = "0"
	}
	x, y := l.scale.X(h.Date), l.ground(h)
	end := y - bedRingStem
	if h.Leans() {
		end = y + bedRingStem
	}
	l.WriteString(`<g` + attributes("class", "ring", "tabindex", tab, "role", "slider", "aria-label", label,
		"aria-valuemin", "0", "aria-valuemax", whole(l.scale.Days), "aria-valuenow", whole(int(h.Date-l.scale.From)),
		"aria-valuetext", date, "data-planting", h.ID, "data-date", h.Date.String(), "data-bed", h.Bed,
		"data-area", number2(h.AreaM2), "data-step", number2(l.options.StepM2), "data-from", l.scale.From.String(), "data-days", whole(l.scale.Days)) + `>`)
	l.upright("stem", x, y, end)
	for _, r := range []struct {
		class string
		size  int
	}{{"reach", bedRingReach}, {"handle", ringSize - 1}} {
		l.WriteString(`<circle class="` + r.class + `" cx="` + px(x) + `" cy="` + px(end) + `" r="` + whole(r.size) + `"/>`)
	}
	l.WriteString(`</g>`)
}

// The ring of a planting in its bed [px]. A finger's reach is the stylesheet's.
const (
	bedRingStem  = 13
	bedRingReach = 12
)
