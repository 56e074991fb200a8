package draw

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
)

// exampleStart is a way of starting with a window from 1 March to 30 June that is
// ready in 80 to 98 days.
func exampleStart() *desk.StartView {
	v := &desk.StartView{Method: "seed", Cover: "open", Chance: make([]float64, 365), Best: 1, BestOn: cal.Of(2027, 5, 1)}
	from := cal.Of(2027, 1, 1)
	w := desk.SpellView{First: cal.Of(2027, 3, 1), Last: cal.Of(2027, 6, 30), Chance: 1}
	for k := range v.Chance {
		if d := from + cal.Date(k); d >= w.First && d <= w.Last {
			v.Chance[k] = 1
		}
	}
	for k := range w.Early {
		w.Early[k], w.Late[k] = w.First+cal.Date(80+2*k), w.Last+cal.Date(80+2*k)
	}
	w.ReadyFrom, w.ReadyTo = w.Early[5], w.Late[5]
	v.Spells = []desk.SpellView{w}
	return v
}

func exampleYear() Scale { return Scale{From: cal.Of(2027, 1, 1), Days: 365, WidthPX: 730} }

func yearOptions() YearOptions {
	return YearOptions{HeightPX: 40, Label: "a <year>", Today: exampleToday, Wanted: .8, Ready: true, AllYear: "all year",
		Day: func(d cal.Date) string { return d.String() }}
}

// The threads of what is ready are ten years: the day on which seven of ten years
// have the first sowing ready has seven threads begun.
func TestThreadsOfAHarvestAreYears(t *testing.T) {
	v := exampleStart()
	y := &year{view: v, scale: exampleYear(), options: yearOptions(), base: 60}
	for _, years := range []int{0, 1, 3, 7, 10} {
		day := v.Spells[0].First + cal.Date(80+2*years) - 1 // as many years are ready before the next one
		drawn := 0
		for j := range desk.Threads {
			if quick := int(thresholds[j] * desk.Threads); v.Spells[0].Early[quick] <= day {
				drawn++
			}
		}
		if drawn != years {
			t.Errorf("%d threads where %d years are ready", drawn, years)
		}
	}
	if d := y.threads(&v.Spells[0], 72); strings.Count(d, "M") != desk.Threads {
		t.Errorf("%d threads", strings.Count(d, "M"))
	}
}

// The height of the area is the chance, and the days that end a window are told.
func TestYearTellsItsWindow(t *testing.T) {
	v := exampleStart()
	svg := Year(v, exampleYear(), yearOptions())
	for _, words := range []string{"2027-03-01", "2027-06-30", v.Spells[0].ReadyFrom.String(), v.Spells[0].ReadyTo.String()} {
		if !strings.Contains(svg, ">"+words+"<") {
			t.Errorf("the drawing does not tell %s", words)
		}
	}
	y := &year{view: v, scale: exampleYear(), options: yearOptions(), base: 60}
	if full, none := y.height(100), y.height(10); full != 200 || none != 600 {
		t.Errorf("a certain day stands at %d, a hopeless one at %d", full, none)
	}
	v.Spells = nil
	if svg := Year(v, exampleYear(), yearOptions()); strings.Contains(svg, `class="ground"`) || strings.Contains(svg, "chance in") {
		t.Error("a year without a window draws one")
	}
}

// Words of a row keep apart and inside.
func TestRowOfWordsKeepsApart(t *testing.T) {
	r := row{y: 10, scale: Scale{WidthPX: 100}}
	var c sheet
	r.set(&c, 0, "one")
	first := r.end
	r.set(&c, 2, "two")
	if r.end <= first || strings.Count(c.String(), "<text") != 2 {
		t.Errorf("the second ends at %.1f, the first at %.1f: %s", r.end, first, c.String())
	}
	r.set(&c, 99, "a long word that has no room left")
	if strings.Count(c.String(), "<text") != 2 || r.end > 100 {
		t.Errorf("what has no room is set: %s", c.String())
	}
}
