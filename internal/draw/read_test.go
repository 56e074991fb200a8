package draw

import (
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// failer is a test or a property's.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// shape is what a path encloses, as read back from its text.
type shape struct{ figures [][][2]float64 }

var token = regexp.MustCompile(`[MhvHVlz]|-?(?:\d+\.?\d*|\.\d+)`)

// readPath understands the strokes the pen writes.
func readPath(t failer, d string) shape {
	t.Helper()
	var s shape
	var now [][2]float64
	x, y := 0.0, 0.0
	words := token.FindAllString(d, -1)
	i := 0
	next := func() float64 {
		v, err := strconv.ParseFloat(words[i], 64)
		if err != nil {
			t.Fatalf("%q is not a number in %q", words[i], d)
		}
		i++
		return v
	}
	for i < len(words) {
		letter := words[i]
		i++
		switch letter {
		case "M":
			if len(now) > 0 {
				s.figures = append(s.figures, now)
			}
			x, y = next(), next()
			now = [][2]float64{{x, y}}
			continue
		case "h":
			x += next()
		case "v":
			y += next()
		case "l":
			x += next()
			y += next()
		case "z":
			continue
		default:
			t.Fatalf("unknown stroke %q in %q", letter, d)
		}
		now = append(now, [2]float64{x, y})
	}
	if len(now) > 0 {
		s.figures = append(s.figures, now)
	}
	return s
}

// has tells whether a point lies inside, by the number of edges to its right.
func (s shape) has(x, y float64) bool {
	in := false
	for _, f := range s.figures {
		for i := range f {
			a, b := f[i], f[(i+1)%len(f)]
			if (a[1] > y) != (b[1] > y) && x < a[0]+(y-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
				in = !in
			}
		}
	}
	return in
}

// paths returns the paths of a drawing by their class, those of one class one
// after another.
func paths(t failer, svg string) map[string]shape {
	t.Helper()
	out := map[string]shape{}
	for _, e := range elements(t, svg) {
		if e.Name.Local != "path" {
			continue
		}
		s := readPath(t, attr(e, "d"))
		have := out[attr(e, "class")]
		out[attr(e, "class")] = shape{append(have.figures, s.figures...)}
	}
	return out
}

// elements reads a drawing as XML; it must be whole.
func elements(t failer, svg string) []xml.StartElement {
	t.Helper()
	var out []xml.StartElement
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("not XML: %v in %.200s", err, svg)
		}
		if e, ok := tok.(xml.StartElement); ok {
			out = append(out, e.Copy())
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
