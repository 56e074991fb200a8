package draw

// poorYear is the share of futures that reach the poor year's edge: nine in ten
// do as well or better. goodYear is its counterpart.
const (
	poorYear   = 0.9
	middleYear = 0.5
	goodYear   = 0.1
)

// edge draws a line upon textures: dashed ink on a band of paper.
func (s *sheet) edge(d string) {
	s.path("edge back", d)
	s.path("edge", d)
}

// edge is the poor year's edge of a ribbon.
func (r *ribbon) edge() string {
	return stepLine(r.x, r.base, func(step int) int {
		return int(float64(r.want[step]) * heightAt(&r.view.Food, step, poorYear))
	})
}

// stepLine draws a line of steps at heights over a base; it breaks where there is
// no height.
func stepLine(x []int, base int, height func(step int) int) string {
	var p pen
	drawn := false
	for i := range len(x) - 1 {
		h := height(i)
		switch {
		case h <= 0 && drawn:
			p.line(p.x, base)
		case h > 0 && !drawn && i > 0:
			p.move(x[i], base)
		case h > 0 && !drawn:
			p.move(x[i], base-h)
		}
		if drawn = h > 0; drawn {
			p.corner(x[i+1], base-h)
		}
	}
	return p.String()
}

// between is the area between two courses of heights over a base.
func between(x []int, base int, low, high func(step int) int) string {
	w := newWeave(x, 1, func(step, row int) int {
		if row == 0 {
			return base - low(step)
		}
		return base - high(step)
	})
	for i := range w.columns() {
		if high(i) > low(i) {
			w.fill(i, 0)
		}
	}
	return w.outline()
}

// monthLines are hairlines where months begin.
func monthLines(s Scale, from, to float64) string {
	var p pen
	for i, m := range s.months() {
		if m.whole && i > 0 {
			p.move(tenths(m.from), tenths(from))
			p.line(tenths(m.from), tenths(to))
		}
	}
	return p.String()
}
