package draw

import (
	"html"
	"strconv"
	"strings"
)

// sheet is a drawing being written.
type sheet struct{ strings.Builder }

// frame opens a drawing of a size [px] that says in text what it shows.
// A stretched drawing follows the width the stylesheet gives it.
func (s *sheet) frame(class, role, label string, w, h float64, stretched bool) {
	s.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="` + class + `" role="` + role + `" aria-label="` + html.EscapeString(label) +
		`" width="` + px(w) + `" height="` + px(h) + `" viewBox="0 0 ` + px(w) + " " + px(h) + `"`)
	if stretched {
		s.WriteString(` preserveAspectRatio="none"`)
	}
	s.WriteString(">")
}

func (s *sheet) done() string {
	s.WriteString("</svg>")
	return s.String()
}

// path draws a path of a class; nothing when there is none.
func (s *sheet) path(class, d string) {
	if d != "" {
		s.WriteString(`<path class="` + class + `" d="` + d + `"/>`)
	}
}

func (s *sheet) rect(class string, x, y, w, h float64) {
	s.WriteString(`<rect class="` + class + `" x="` + px(x) + `" y="` + px(y) + `" width="` + px(w) + `" height="` + px(h) + `"/>`)
}

// text sets words with their baseline at y; nothing when there are none.
func (s *sheet) text(class string, x, y float64, words string) {
	if words != "" {
		s.WriteString(`<text class="` + class + `" x="` + px(x) + `" y="` + px(y) + `">` + html.EscapeString(words) + `</text>`)
	}
}

// level and upright lines.
func (s *sheet) level(class string, x1, x2, y float64) {
	s.path(class, "M"+px(x1)+" "+px(y)+"h"+px(x2-x1))
}

func (s *sheet) upright(class string, x, y1, y2 float64) {
	s.path(class, "M"+px(x)+" "+px(y1)+"v"+px(y2-y1))
}

// attributes writes names and values in the order given.
func attributes(pairs ...string) string {
	var b strings.Builder
	for i := 0; i+1 < len(pairs); i += 2 {
		b.WriteString(" " + pairs[i] + `="` + html.EscapeString(pairs[i+1]) + `"`)
	}
	return b.String()
}

func whole(n int) string { return strconv.Itoa(n) }

// widthOf is about how wide words are set at a size [px]; sans at a medium
// weight, judged by eye.
func widthOf(words string, size float64) float64 {
	return 0.52 * size * float64(len([]rune(words)))
}
