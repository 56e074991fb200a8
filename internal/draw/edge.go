package draw

// poorYear is the share of futures that reach the poor year's edge: nine in ten
// do as well or better. goodYear is its counterpart.
const (
	poorYear = 0.9
	goodYear = 0.1
)

// edge draws a line upon textures: dashed ink on a band of paper.
func (s *sheet) edge(d string) {
	s.path("edge back", d)
	s.path("edge", d)
}

// edge is the poor year's edge of a ribbon.
func (r *ribbon) edge() string {
	return stepLine(r.x, r.base, func(step int) (int, bool) {
		return int(float64(r.want[step]) * heightAt(&r.view.Food, step, poorYear)), r.want[step] > 0
	})
}

// stepLine draws a line of steps at heights over a base; it breaks where there is
// none, and does not run along the base.
func stepLine(x []int, base int, height func(step int) (int, bool)) string {
	var p pen
	drawn := false
	for i := range len(x) - 1 {
		h, there := height(i)
		if !there || h <= 0 {
			if drawn {
				p.line(p.x, base)
			}
			drawn = false
			continue
		}
		if !drawn {
			p.move(x[i], base)
			if i == 0 {
				p.move(x[i], base-h)
			}
		}
		p.corner(x[i+1], base-h)
		drawn = true
	}
	return p.String()
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
