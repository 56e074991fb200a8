package draw

import "garner/internal/desk"

// thresholds of the ten threads from the ground up. The order is broken so that
// a ribbon frays evenly over its height where threads end.
var thresholds = [desk.Threads]float64{.05, .55, .25, .75, .15, .85, .45, .95, .35, .65}

// holds tells whether a thread is drawn at the odds p. Shares are of whole
// futures; the small allowance is for their last bits.
func holds(p float64, thread int) bool {
	return p >= thresholds[thread%desk.Threads]-1e-6
}

// weave is a grid of cells, of which some are filled: a row is a thread, a
// column a step of time.
type weave struct {
	x     []int                     // where columns begin, and the end of the last [tenths of px]
	rows  int                       // threads
	y     func(column, row int) int // the lower edge of a row in a column [tenths of px]
	cells []bool                    // by column and row
}

func newWeave(x []int, rows int, y func(column, row int) int) *weave {
	return &weave{x: x, rows: rows, y: y, cells: make([]bool, (len(x)-1)*rows)}
}

func (w *weave) columns() int { return len(w.x) - 1 }

func (w *weave) fill(column, row int) { w.cells[column*w.rows+row] = true }

func (w *weave) filled(column, row int) bool {
	return column >= 0 && column < w.columns() && row >= 0 && row < w.rows && w.cells[column*w.rows+row]
}

// The sides of a cell, in the order in which the outline runs round it with the
// filled cells on its left.
const (
	bottom = iota
	right
	top
	left
)

// beside is the neighbouring column and row across a side.
var beside = [4][2]int{bottom: {0, -1}, right: {1, 0}, top: {0, 1}, left: {-1, 0}}

// outline returns the outline of all filled cells as a path. Drawn as one figure
// it has no seams between threads, and it is a small fraction of the rectangles'
// length.
func (w *weave) outline() string {
	p := &pen{}
	seen := make([]bool, 4*len(w.cells))
	for row := range w.rows {
		for column := range w.columns() {
			if w.filled(column, row) && !w.filled(column, row-1) && !seen[w.edge(column, row, bottom)] {
				w.walk(p, seen, column, row)
			}
		}
	}
	return p.String()
}

func (w *weave) edge(column, row, side int) int { return 4*(column*w.rows+row) + side }

// walk follows one outline from the bottom side of a cell until it is closed.
// Every outline has a bottom side, so all are found.
func (w *weave) walk(p *pen, seen []bool, column, row int) {
	side := bottom
	p.move(w.x[column], w.y(column, row))
	for !seen[w.edge(column, row, side)] {
		seen[w.edge(column, row, side)] = true
		w.draw(p, column, row, side)
		column, row, side = w.next(column, row, side)
	}
	p.close()
}

// draw draws one side; where the neighbouring column is of another height, an
// upright stroke leads over.
func (w *weave) draw(p *pen, column, row, side int) {
	low, high := w.y(column, row), w.y(column, row+1)
	from, to := w.x[column], w.x[column+1]
	switch side {
	case bottom:
		p.corner(to, low)
	case right:
		p.line(to, low)
		p.line(to, high)
	case top:
		p.corner(from, high)
	case left:
		p.line(from, high)
		p.line(from, low)
	}
}

// next is the side that follows: round the cell's own corner, straight on along
// the neighbour, or into the inner corner.
func (w *weave) next(column, row, side int) (int, int, int) {
	ahead := (side + 1) % 4
	c, r := column+beside[ahead][0], row+beside[ahead][1]
	if !w.filled(c, r) {
		return column, row, ahead
	}
	ic, ir := c+beside[side][0], r+beside[side][1]
	if !w.filled(ic, ir) {
		return c, r, side
	}
	return ic, ir, (side + 3) % 4
}
