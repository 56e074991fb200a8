package draw

import (
	"strings"
	"testing"

	"garner/internal/cal"
)

// A job that can be done from the third to the sixth day of ten is a line of four days
// with its end and a dot in the middle of the best; one that began before and never ends
// on the scale runs from edge to edge, without an end.
func TestAJobWaitsAsLongAsItsLine(t *testing.T) {
	from := cal.Of(2027, 1, 4)
	s := Scale{From: from, Days: 10, WidthPX: 100}
	drawn := Wait(s, Waiting{First: from + 2, Best: from + 3, Last: from + 5})
	for _, want := range []string{`class="can" d="M20 9h40"`, `class="can" d="M60 4v10"`, `cx="35" cy="9"`} {
		if !strings.Contains(drawn, want) {
			t.Errorf("no %s in %s", want, drawn)
		}
	}
	drawn = Wait(s, Waiting{First: from - 5, Best: from - 1, Last: from + 40})
	if !strings.Contains(drawn, `class="can" d="M0 9h100"`) || strings.Count(drawn, `class="can"`) != 1 || strings.Contains(drawn, "<circle") {
		t.Errorf("drawn %s", drawn)
	}
}

// The first day is named, then Mondays, as far as there is room.
func TestDaysOverJobsHaveRoom(t *testing.T) {
	from := cal.Of(2027, 1, 6)
	name := func(d cal.Date) string { return d.String()[5:] }
	got := WaitAxis(Scale{From: from, Days: 28, WidthPX: 168}, name)
	if !strings.Contains(got, ">01-06<") || strings.Contains(got, ">01-11<") || !strings.Contains(got, ">01-18<") {
		t.Errorf("drawn %s", got)
	}
}

// Litres are as long as their share of the most, and never nothing.
func TestLitresAreDrawnByLength(t *testing.T) {
	if got := Litres(5, 20, 112); !strings.Contains(got, `width="28"`) {
		t.Errorf("a quarter is %s", got)
	}
	if got := Litres(0.01, 20, 112); !strings.Contains(got, `class="water" x="0" y="1" width="3"`) {
		t.Errorf("hardly any is %s", got)
	}
	if Litres(0, 20, 112) != "" || Litres(3, 0, 112) != "" {
		t.Error("nothing is drawn as something")
	}
}
