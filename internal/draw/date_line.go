package draw

import (
	"garner/internal/cal"
)

// DateLineOptions say how the axis over the beds and the line of the plan's date
// are drawn.
type DateLineOptions struct {
	Label  string     // of the axis, in text
	Months [12]string // as they are named on it
	Year   func(year int) string
	Month  func(first cal.Date) (label, path string) // where a month leads
	Slider string                                    // what the line does, in text
	At     cal.Date
	AtText string // the date, in text
	AtName string // as it stands beside the line
	Today  cal.Date
}

// dateAxisHeight is as high as a thumb [px].
const dateAxisHeight = 46.0

// reachWide is how wide a finger finds the line [px].
const reachWide = 44.0

// DateAxis draws the months over the beds. Each leads to its first day; the line
// of the plan's date begins here and can be dragged along.
func DateAxis(s Scale, o DateLineOptions) string {
	var c sheet
	c.frame("date-axis", "group", o.Label, s.WidthPX, dateAxisHeight, false)
	c.path("hair", monthLines(s, dateAxisHeight-26, dateAxisHeight))
	first := true
	for _, m := range s.months() {
		name := o.Months[m.month-1]
		if (first || m.month == 1) && o.Year != nil {
			name += " " + o.Year(m.year)
		}
		if widthOf(name, labelSize)*semiBold > m.to-m.from && !first {
			name = o.Months[m.month-1]
		}
		if widthOf(name, labelSize) > m.to-m.from {
			continue
		}
		class := "mid t-ink f14"
		if first || m.month == 1 {
			class += " b"
		}
		first = false
		if o.Month != nil {
			label, path := o.Month(m.first)
			c.WriteString(`<a` + attributes("href", path, "aria-label", label, "data-try", "") + `>`)
			c.rect("touch", m.from, 0, m.to-m.from, dateAxisHeight)
		}
		c.text(class, (m.from+m.to)/2, dateAxisHeight-8, name)
		if o.Month != nil {
			c.WriteString(`</a>`)
		}
	}
	c.level("base", 0, s.WidthPX, dateAxisHeight-1)
	if s.has(o.At) {
		c.slider(s, o)
	}
	return c.done()
}

func (c *sheet) slider(s Scale, o DateLineOptions) {
	x := s.X(o.At)
	c.WriteString(`<g` + attributes("class", "date-line", "id", "date-line", "tabindex", "0", "role", "slider", "aria-label", o.Slider,
		"aria-valuemin", "0", "aria-valuemax", whole(s.Days-1), "aria-valuenow", whole(int(o.At-s.From)), "aria-valuetext", o.AtText,
		"data-at", o.At.String(), "data-from", s.From.String(), "data-days", whole(s.Days)) + `>`)
	c.rect("reach", x-reachWide/2, 0, reachWide, dateAxisHeight)
	c.upright("pen", x, 3, dateAxisHeight)
	class, tx := "t-pen halo f14", x+6
	if w := widthOf(o.AtName, 14) * semiBold; tx+w > s.WidthPX {
		class, tx = class+" end", x-6
	}
	c.text(class, tx, 13, o.AtName)
	c.WriteString(`</g>`)
}

// DateLine draws the line of the plan's date, and today's, through the beds below
// the axis: as high as the page makes it.
func DateLine(s Scale, o DateLineOptions) string {
	var c sheet
	c.WriteString(`<svg xmlns="http://www.w3.org/2000/svg"` + attributes("class", "date-through", "width", px(s.WidthPX), "height", "100%", "aria-hidden", "true") + `>`)
	line := func(class string, x float64) {
		c.WriteString(`<line` + attributes("class", class, "x1", px(x), "x2", px(x), "y1", "0", "y2", "100%") + `/>`)
	}
	if s.has(o.Today) && o.Today != o.At {
		line("pen today dotted", s.X(o.Today))
	}
	if s.has(o.At) {
		c.WriteString(`<g class="date-mark">`)
		line("reach", s.X(o.At))
		line("pen", s.X(o.At))
		c.WriteString(`</g>`)
	}
	return c.done()
}
