package draw

import (
	"encoding/xml"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
)

// The year with which an axis begins is told once: beside its first month where
// there is room, else over it, clear of the line for today.
func TestTheFirstYearIsTold(t *testing.T) {
	for name, c := range map[string]struct {
		from, today cal.Date
		year        string
		over        bool
	}{
		"a month in part":      {cal.Of(2027, 1, 4), cal.Of(2027, 1, 4), "2027", true},
		"late in its week":     {cal.Of(2027, 1, 4), cal.Of(2027, 1, 9), "2027", true},
		"a whole month":        {cal.Of(2027, 2, 1), cal.Of(2027, 2, 3), "2027", true},
		"a whole January":      {cal.Of(2029, 1, 1), cal.Of(2029, 1, 1), "2029", false},
		"days of a month only": {cal.Of(2027, 3, 29), cal.Of(2027, 3, 30), "2027", true},
	} {
		t.Run(name, func(t *testing.T) {
			svg := Axis(Weeks(c.from, exampleWeeks), c.today, exampleDaylight(), exampleTexts())
			if n := strings.Count(svg, ">"+c.year+"<"); n != 1 {
				t.Errorf("%s is told %d times", c.year, n)
			}
			if over := strings.Contains(svg, `halo f12`); over != c.over {
				t.Errorf("over the month: %t", over)
			}
			for _, e := range elements(t, svg) {
				if e.Name.Local == "text" && strings.Contains(attr(e, "class"), "halo f12") {
					if x, line := attrX(t, e), Weeks(c.from, exampleWeeks).X(c.today); x <= line {
						t.Errorf("the year stands at %g, the line for today at %g", x, line)
					}
				}
			}
		})
	}
}

func attrX(t *testing.T, e xml.StartElement) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(attr(e, "x"), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
