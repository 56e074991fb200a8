package draw

import (
	"math"
	"strconv"
)

// tenths rounds a length to tenths of a pixel, the unit of all paths.
func tenths(px float64) int { return int(math.Round(px * 10)) }

// number writes tenths of a pixel as short as SVG allows: 12, 3.4, .5, -.5.
func number(tenths int) string {
	s := ""
	if tenths < 0 {
		s, tenths = "-", -tenths
	}
	whole, part := tenths/10, tenths%10
	if whole > 0 || part == 0 {
		s += strconv.Itoa(whole)
	}
	if part > 0 {
		s += "." + strconv.Itoa(part)
	}
	return s
}

// px writes a length as tenths.
func px(v float64) string { return number(tenths(v)) }

// pen writes a path. Level and upright strokes that follow one another in the
// same direction are joined.
type pen struct {
	d          []byte
	x, y       int // where it stands
	x0, y0     int // where the figure began
	level, len int // the stroke not yet written: level or upright, and how far
}

const (
	still = iota
	level
	upright
)

func (p *pen) move(x, y int) {
	p.flush()
	p.d = append(p.d, 'M')
	p.d = append(p.d, number(x)...)
	p.pair(number(y))
	p.x, p.y, p.x0, p.y0 = x, y, x, y
}

// pair adds a second number, with a space where it would run into the first.
func (p *pen) pair(s string) {
	if s[0] != '-' {
		p.d = append(p.d, ' ')
	}
	p.d = append(p.d, s...)
}

// line draws to a point; a slanted stroke is written at once.
func (p *pen) line(x, y int) {
	switch {
	case x == p.x && y == p.y:
	case y == p.y:
		p.stroke(level, x-p.x)
	case x == p.x:
		p.stroke(upright, y-p.y)
	default:
		p.flush()
		p.d = append(p.d, 'l')
		p.d = append(p.d, number(x-p.x)...)
		p.pair(number(y - p.y))
	}
	p.x, p.y = x, y
}

// corner draws to a point by an upright and then a level stroke.
func (p *pen) corner(x, y int) {
	p.line(p.x, y)
	p.line(x, y)
}

func (p *pen) stroke(way, by int) {
	if p.level != way {
		p.flush()
		p.level = way
	}
	p.len += by
}

func (p *pen) flush() {
	if p.level != still && p.len != 0 {
		p.d = append(p.d, "hv"[p.level-1])
		p.d = append(p.d, number(p.len)...)
	}
	p.level, p.len = still, 0
}

// close ends a figure; a stroke that leads back to its beginning need not be
// written.
func (p *pen) close() {
	if p.x == p.x0 && p.y == p.y0 {
		p.level, p.len = still, 0
	}
	p.flush()
	p.d = append(p.d, 'z')
}

func (p *pen) String() string {
	p.flush()
	return string(p.d)
}
