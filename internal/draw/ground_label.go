package draw

import (
	"html"
	"strconv"

	"garner/internal/desk"
)

// nameSize is the size of the names upon lanes [px].
const nameSize = 13.5

// label sets words where they meet no others and stay inside; it tells whether it
// did.
func (l *bedLane) label(class string, x, y, size float64, words string) bool {
	w := widthOf(words, size)
	if words == "" || x < 0 || x+w > l.scale.WidthPX {
		return false
	}
	if !l.labels.take(taken{x - 2, y - size*.8, x + w + 3, y + size*.25}) {
		return false
	}
	l.text(class, x, y, words)
	return true
}

// name sets a planting's name in its solid part, on its growing part or behind it,
// whichever first has room.
func (l *bedLane) name(h *desk.HeldGround) {
	if l.options.Names == nil {
		return
	}
	for _, words := range l.options.Names(h) {
		if l.nameInside(h, words) || l.nameOn(h, words) || l.nameBehind(h, words) {
			return
		}
	}
}

// nameInside sets a name in paper colour where it is picked.
func (l *bedLane) nameInside(h *desk.HeldGround, words string) bool {
	if h.Leans() || l.options.Tried[h.ID] {
		return false
	}
	x := l.scale.steps(len(h.Picked))
	high := l.thickness(h)
	at := longest(x, func(i int) bool {
		return h.Picked[i] >= 0.9 && i < len(h.Leaf) && high*max(laneFloor, float64(h.Leaf[i])) >= nameSize+1
	})
	if float64(at.width)/10 < widthOf(words, nameSize)+12 {
		return false
	}
	left := float64(x[at.from])/10 + 7
	lowest := high
	for i := at.from; i < at.to && float64(x[i])/10 < left+widthOf(words, nameSize); i++ {
		lowest = min(lowest, high*max(laneFloor, float64(h.Leaf[i])))
	}
	return l.label("t-on m lane-name", left, l.ground(h)-lowest/2+4.7, nameSize, words)
}

// nameOn sets a name where it grows.
func (l *bedLane) nameOn(h *desk.HeldGround, words string) bool {
	from, to := l.span(h)
	room := to - from
	if widthOf(words, nameSize)+10 > room {
		return false
	}
	inset := 5.0
	if h.Movable {
		inset = 8 // clear of the ring
	}
	return l.label(l.nameClass(h), from+inset, l.nameLine(h), nameSize, words)
}

// nameBehind sets a name after a planting's end.
func (l *bedLane) nameBehind(h *desk.HeldGround, words string) bool {
	_, to := l.span(h)
	return l.label(l.nameClass(h), to+8, l.nameLine(h), nameSize, words)
}

func (l *bedLane) nameLine(h *desk.HeldGround) float64 {
	high := l.thickness(h)
	if h.Leans() {
		return l.ground(h) + max(nameSize-2, high/2+4.7)
	}
	return l.ground(h) - max(3, high/2-4.7)
}

func (l *bedLane) nameClass(h *desk.HeldGround) string {
	if l.options.Tried[h.ID] {
		return "t-pen halo lane-name"
	}
	return "t-ink halo lane-name"
}

// leastFreeShare is the part of a bed from which free ground is named, 0-1.
const leastFreeShare = 0.3

// freeWords name free ground where there is room.
func (l *bedLane) freeWords(f *desk.FreeStretch) {
	if l.options.Free == nil || f.Share < leastFreeShare {
		return
	}
	from, to := l.freeSpan(f)
	y := l.base - (f.At+f.Share/2)*l.options.HeightPX + 4.5
	for _, words := range l.options.Free(*f) {
		w := widthOf(words, 14)
		if w+8 > to-from {
			continue
		}
		if l.label("free halo", (from+min(to, from+260)-w)/2, y, 14, words) {
			return
		}
	}
}

func escaped(words string) string { return html.EscapeString(words) }

// number2 writes a number as short as it goes, to hundredths.
func number2(x float64) string {
	return strconv.FormatFloat(float64(int(x*100+.5))/100, 'f', -1, 64)
}
