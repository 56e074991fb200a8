package draw

import (
	"garner/internal/desk"
)

// field is a grid of values over a drawing, with a rim of full light laid close
// about it, so that every line of equal light closes.
type field struct {
	columns, rows int // with the rim
	values        []float64
	x, y          []float64 // of columns and rows [px]
	w, h          float64   // [px]
}

// fieldOf lays the map of a site on a drawing, its bottom edge at the foot.
func fieldOf(v *desk.ShadeView, perM float64) *field {
	g := &v.Map
	f := &field{columns: g.Columns + 2, rows: g.Rows + 2, w: g.WidthM * perM, h: g.DepthM * perM}
	for c := range f.columns {
		f.x = append(f.x, perM*min(g.WidthM, g.StepM*float64(min(max(c-1, 0), g.Columns-1))))
	}
	for r := range f.rows {
		f.y = append(f.y, f.h-perM*min(g.DepthM, g.StepM*float64(min(max(r-1, 0), g.Rows-1))))
	}
	for r := range f.rows {
		for c := range f.columns {
			value := 2.0
			if r > 0 && c > 0 && r <= g.Rows && c <= g.Columns {
				value = g.Light[(r-1)*g.Columns+c-1]
			}
			f.values = append(f.values, value)
		}
	}
	return f
}

// spot is a point of a line [px]; at the drawing's edge it is not drawn as one.
type spot struct {
	x, y float64
	edge bool
}

// crossing is where a line of equal light crosses a side of a square: the side's
// corner and whether it runs to the right or up.
type crossing struct {
	c, r  int
	right bool
}

// loops are the closed lines round all that lies below a level, by marching
// squares; each runs with the darker side to its left.
func (f *field) loops(level float64) [][]spot {
	next := map[crossing]crossing{}
	var order []crossing
	for r := range f.rows - 1 {
		for c := range f.columns - 1 {
			for _, s := range f.segments(c, r, level) {
				next[s[0]] = s[1]
				order = append(order, s[0])
			}
		}
	}
	var out [][]spot
	for _, first := range order {
		if _, left := next[first]; !left {
			continue
		}
		var loop []spot
		for at := first; ; {
			to, ok := next[at]
			if !ok {
				break
			}
			delete(next, at)
			loop = append(loop, f.spot(at, level))
			at = to
		}
		if len(loop) > 2 {
			out = append(out, loop)
		}
	}
	return out
}

// segments are the pieces of the line in one square.
func (f *field) segments(c, r int, level float64) [][2]crossing {
	below, right, above, left := crossing{c, r, true}, crossing{c + 1, r, false}, crossing{c, r + 1, true}, crossing{c, r, false}
	v := [4]float64{f.at(c, r), f.at(c+1, r), f.at(c+1, r+1), f.at(c, r+1)}
	kind := 0
	for i, value := range v {
		if value < level {
			kind |= 1 << i
		}
	}
	switch kind {
	case 1:
		return [][2]crossing{{below, left}}
	case 2:
		return [][2]crossing{{right, below}}
	case 3:
		return [][2]crossing{{right, left}}
	case 4:
		return [][2]crossing{{above, right}}
	case 6:
		return [][2]crossing{{above, below}}
	case 7:
		return [][2]crossing{{above, left}}
	case 8:
		return [][2]crossing{{left, above}}
	case 9:
		return [][2]crossing{{below, above}}
	case 11:
		return [][2]crossing{{right, above}}
	case 12:
		return [][2]crossing{{left, right}}
	case 13:
		return [][2]crossing{{below, right}}
	case 14:
		return [][2]crossing{{left, below}}
	case 5, 10: // a saddle: the middle tells which corners are joined
		joined := (v[0]+v[1]+v[2]+v[3])/4 < level
		switch {
		case kind == 5 && joined:
			return [][2]crossing{{below, right}, {above, left}}
		case kind == 5:
			return [][2]crossing{{below, left}, {above, right}}
		case joined:
			return [][2]crossing{{left, below}, {right, above}}
		}
		return [][2]crossing{{right, below}, {left, above}}
	}
	return nil
}

func (f *field) at(c, r int) float64 { return f.values[r*f.columns+c] }

// spot is where a line crosses a side.
func (f *field) spot(at crossing, level float64) spot {
	c, r := at.c, at.r
	if at.right {
		c++
	} else {
		r++
	}
	a, b := f.at(at.c, at.r), f.at(c, r)
	t := (level - a) / (b - a)
	return spot{f.x[at.c] + t*(f.x[c]-f.x[at.c]), f.y[at.r] + t*(f.y[r]-f.y[at.r]),
		at.c == 0 || at.r == 0 || c == f.columns-1 || r == f.rows-1}
}

// area is the path round loops, and line the same without what runs along the
// drawing's edge.
func area(loops [][]spot) string {
	var out pen
	for _, loop := range loops {
		for i, s := range loop {
			if i == 0 {
				out.move(tenths(s.x), tenths(s.y))
			} else {
				out.line(tenths(s.x), tenths(s.y))
			}
		}
		out.close()
	}
	return out.String()
}

func line(loops [][]spot) string {
	var out pen
	for _, loop := range loops {
		drawing := false
		for i := range len(loop) + 1 {
			s := loop[i%len(loop)]
			switch {
			case i > 0 && s.edge && loop[i-1].edge:
				drawing = false
			case drawing:
				out.line(tenths(s.x), tenths(s.y))
			case i > 0 && !s.edge || i > 0 && !loop[i-1].edge:
				out.move(tenths(loop[i-1].x), tenths(loop[i-1].y))
				out.line(tenths(s.x), tenths(s.y))
				drawing = true
			}
		}
	}
	return out.String()
}
