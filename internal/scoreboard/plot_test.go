package scoreboard

import (
	"fmt"
	"garner/internal/printed"
	"html"
	"math"
	"strings"
)

// plot is a small drawing for the documents, in the look of the pages: ink on
// paper, hair lines, a wash for what is published.
type plot struct {
	b             strings.Builder
	width, height float64
}

// The colours of the pages (internal/web/style).
const (
	paper = "#fcfbf7"
	ink   = "#191713"
	soot  = "#35322b"
	rule  = "#cbc6b8"
	pen   = "#0b3d91"
	wash  = "#e3eaf7"
)

func newPlot(width, height float64, title string) *plot {
	p := &plot{width: width, height: height}
	fmt.Fprintf(&p.b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" width="%g" height="%g" role="img" font-family="system-ui, 'Segoe UI', Roboto, 'Noto Sans', sans-serif" font-size="12">`+"\n", width, height, width, height)
	fmt.Fprintf(&p.b, "<title>%s</title>\n", html.EscapeString(title))
	fmt.Fprintf(&p.b, `<rect width="%g" height="%g" fill="%s"/>`+"\n", width, height, paper)
	return p
}

func (p *plot) line(x1, y1, x2, y2 float64, colour string, width float64) {
	fmt.Fprintf(&p.b, `<path d="M%.1f %.1fL%.1f %.1f" stroke="%s" stroke-width="%g"/>`+"\n", x1, y1, x2, y2, colour, width)
}

func (p *plot) box(x1, y1, x2, y2 float64, colour string) {
	fmt.Fprintf(&p.b, `<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f" fill="%s"/>`+"\n", x1, y1, x2-x1, y2-y1, colour)
}

// dot is filled for what is met, open for what is missed.
func (p *plot) dot(x, y float64, met bool) {
	fill := paper
	if met {
		fill = ink
	}
	fmt.Fprintf(&p.b, `<circle cx="%.1f" cy="%.1f" r="3" fill="%s" stroke="%s"/>`+"\n", x, y, fill, ink)
}

// text writes a label; anchor is start, middle or end.
func (p *plot) text(x, y float64, anchor, s string) {
	fmt.Fprintf(&p.b, `<text x="%.1f" y="%.1f" text-anchor="%s" fill="%s">%s</text>`+"\n", x, y, anchor, soot, html.EscapeString(s))
}

func (p *plot) done() string { return p.b.String() + "</svg>\n" }

// scale takes values to places.
type scale struct {
	low, high, from, to float64
	log                 bool
}

func (s scale) at(v float64) float64 {
	v = min(max(v, s.low), s.high)
	if s.log {
		return s.from + (s.to-s.from)*math.Log(v/s.low)/math.Log(s.high/s.low)
	}
	return s.from + (s.to-s.from)*(v-s.low)/(s.high-s.low)
}

// drawnEmergence sets computed days to emergence against printed ones.
func drawnEmergence(s *Section) string {
	p := newPlot(430, 410, "Days to emergence: computed against printed")
	x, y := scale{2, 100, 50, 415, true}, scale{2, 100, 360, 12, true}
	fmt.Fprintf(&p.b, `<path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fL%.1f %.1fZ" fill="%s"/>`+"\n", x.at(2), y.at(2), x.at(100/1.15), y.at(100), x.at(100), y.at(100*0.85), x.at(2/0.85), y.at(2), wash)
	for _, v := range []float64{2, 5, 10, 20, 50, 100} {
		p.line(x.at(v), y.at(2), x.at(v), y.at(100), rule, 0.5)
		p.line(x.at(2), y.at(v), x.at(100), y.at(v), rule, 0.5)
		p.text(x.at(v), 378, "middle", fmt.Sprint(v))
		p.text(44, y.at(v)+4, "end", fmt.Sprint(v))
	}
	p.line(x.at(2), y.at(2), x.at(100), y.at(100), soot, 0.8)
	for _, q := range s.Points {
		p.dot(x.at(q.Published), y.at(q.Computed), math.Abs(q.Computed/q.Published-1) <= 0.15)
	}
	p.text(232, 400, "middle", "printed days; band: 15 % either way")
	p.text(6, 404, "start", "computed ↑")
	return p.done()
}

// drawnDates strews the signed distance of every date by region.
func drawnDates(s *Section) string {
	var regions []string
	by := map[string][]*Line{}
	for i := range s.Lines {
		l := &s.Lines[i]
		region, ok := l.Check.Args["region"].(string)
		if !ok || l.Verdict == Apart {
			continue
		}
		if by[region] == nil {
			regions = append(regions, region)
		}
		by[region] = append(by[region], l)
	}
	const row = 34.0
	p := newPlot(640, row*float64(len(regions))+56, "Distance of the windows from printed dates, by region")
	x := scale{-90, 90, 150, 630, false}
	bottom := row*float64(len(regions)) + 8
	p.box(x.at(-printed.Within), 4, x.at(printed.Within), bottom, wash)
	for _, v := range []float64{-90, -60, -30, 0, 30, 60, 90} {
		p.line(x.at(v), 4, x.at(v), bottom, rule, 0.5)
		p.text(x.at(v), bottom+16, "middle", fmt.Sprint(v))
	}
	for i, region := range regions {
		top := 8 + row*float64(i)
		p.text(6, top+19, "start", region)
		for k, end := range []string{"first", "last"} {
			at := top + 8 + 15*float64(k)
			p.text(142, at+4, "end", end)
			for _, l := range by[region] {
				if l.Check.Key == "scoreboard.date_"+end && !math.IsNaN(l.Difference) {
					p.line(x.at(l.Difference), at-5, x.at(l.Difference), at+5, ink, 1)
				}
			}
		}
	}
	p.text(390, bottom+36, "middle", "days from the printed stretch to the window; below 0 earlier; band: three weeks")
	return p.done()
}

// drawnRanges sets published ranges, washed, against computed ones, in ink.
func drawnRanges(lines []*Line, name func(*Line) string, most float64, unit, title string) string {
	const row = 17.0
	p := newPlot(640, row*float64(len(lines))+52, title)
	x := scale{0, most, 290, 622, false}
	bottom := row*float64(len(lines)) + 10
	for v := 0.0; v <= most; v += most / 5 {
		p.line(x.at(v), 4, x.at(v), bottom, rule, 0.5)
		p.text(x.at(v), bottom+16, "middle", fmt.Sprintf("%.0f", v))
	}
	for i, l := range lines {
		at := 14 + row*float64(i)
		p.text(282, at+4, "end", name(l))
		p.box(x.at(l.Published.Low), at-6, max(x.at(l.Published.High), x.at(l.Published.Low)+2), at+6, wash)
		p.line(x.at(l.Published.Low), at-6, x.at(l.Published.Low), at+6, pen, 1)
		p.line(x.at(l.Published.High), at-6, x.at(l.Published.High), at+6, pen, 1)
		if math.IsInf(l.Computed.Low, 1) {
			p.text(626, at+4, "start", "×")
			continue
		}
		p.line(x.at(l.Computed.Low), at, x.at(l.Computed.High), at, ink, 1.5)
		p.dot(x.at(l.Computed.Low), at, l.Verdict == Met)
		p.dot(x.at(l.Computed.High), at, l.Verdict == Met)
	}
	p.text(622, bottom+34, "end", unit)
	return p.done()
}
