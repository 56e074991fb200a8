package draw

import (
	"fmt"
	"strings"
)

// stretch is how much a ribbon drawn at WeekPX is stretched on a kind of page.
// Its patterns are drawn with the reverse, so that hatching keeps its slant.
type stretch struct {
	suffix string
	x, y   float64
}

var stretches = []stretch{
	{"", 1, 1},
	{"-wide", WideWeekPX / WeekPX, 1},
	{"-phone", PhoneWeekPX / WeekPX, 1.5},
	{"-sum", PhoneWeekPX / WeekPX, 1}, // the sum of the table on a phone
}

// Defs returns the drawing that holds the textures. It stands once in a page,
// before the drawings that use them.
func Defs() string {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="defs" width="0" height="0" aria-hidden="true" focusable="false"><defs>`)
	for _, s := range stretches {
		undo := fmt.Sprintf("scale(%.4g %.4g)", 1/s.x, 1/s.y)
		if s.suffix == "" {
			undo = ""
		}
		hatch(&b, "store"+s.suffix, undo, 45)
		hatch(&b, "store2"+s.suffix, undo, -45)
		grid(&b, "bought"+s.suffix, undo)
		pattern(&b, "over"+s.suffix, 4, 4, undo, `<circle class="p-ink" cx="1" cy="1" r=".85"/><circle class="p-ink" cx="3" cy="3" r=".85"/>`)
		pattern(&b, "draft"+s.suffix, 6, 6, undo, `<rect class="p-pen" width="6" height="6"/><rect class="p-paper" x="2" width="1.4" height="6"/>`)
	}
	pattern(&b, "water", 6, 4, "", `<rect class="p-soot" y="1" width="6" height="1.6"/>`)
	b.WriteString(`</defs></svg>`)
	return b.String()
}

// grid is fine lines both ways, 5 px apart.
func grid(b *strings.Builder, id, undo string) {
	pattern(b, id, 5, 5, undo, `<rect class="p-paper" width="5" height="5"/><rect class="p-soot" width="1" height="5"/><rect class="p-soot" width="5" height="1"/>`)
}

// hatch is slanted lines, 5 px apart.
func hatch(b *strings.Builder, id, undo string, degrees int) {
	pattern(b, id, 5, 5, strings.TrimSpace(fmt.Sprintf("%s rotate(%d)", undo, degrees)),
		`<rect class="p-tone" width="5" height="5"/><rect class="p-soot" width="1.9" height="5"/>`)
}

func pattern(b *strings.Builder, id string, width, height int, transform, inside string) {
	b.WriteString(`<pattern` + attributes("id", id, "width", whole(width), "height", whole(height), "patternUnits", "userSpaceOnUse"))
	if transform != "" {
		b.WriteString(attributes("patternTransform", transform))
	}
	b.WriteString(`>` + inside + `</pattern>`)
}
