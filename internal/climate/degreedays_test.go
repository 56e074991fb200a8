package climate

import (
	"math"
	"testing"
)

// Every published worked example whose printed figure is right.
func TestDegreeDaysAgainstWorkedExamples(t *testing.T) {
	tab := readTable(t, "gdd_examples.csv")
	checked := 0
	for row := range tab.Rows {
		c := cells{tab, row}
		if c.text("agrees") != "yes" {
			continue
		}
		low, high, base, upper := c.number("tmin"), c.number("tmax"), c.number("base"), NoUpper
		if u := c.maybe("upper"); u.Known {
			upper = u.Value
		}
		var got float64
		switch c.text("method") { // any unit serves: the methods have no constants
		case "average":
			got = DegreeDays(low, high, base)
		case "modified_average":
			got = DegreeDaysModified(low, high, base, upper)
		case "single_sine":
			got = DegreeDaysSineUpper(low, high, base, upper)
		case "single_triangle":
			got = DegreeDaysTriangle(low, high, base, upper)
		default:
			t.Fatalf("no method %s", c.text("method"))
		}
		checked++
		if want := c.number("degree_days_original"); math.Abs(got-want) > 0.006 {
			t.Errorf("row %d: %s %.4f, want %v (%s)", tab.Numbers[row], c.text("method"), got, want, c.text("source"))
		}
	}
	if checked != 37 {
		t.Errorf("%d examples checked", checked)
	}
}

// NOAA's degree-days above 50 F of a mean day, Lebanon, July: 347.8 C d.
func TestDegreeDaysOfNormals(t *testing.T) {
	n := lebanonNormals(t)[6]
	if got := 31 * DegreeDays(n.TMinC, n.TMaxC, 10); math.Abs(got-347.8) > 0.3 {
		t.Errorf("%.1f", got)
	}
}
