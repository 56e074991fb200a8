package draw

import (
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
)

// choice is a crop that gives less and less, and what follows it.
func choice() *desk.KeepOrClearView {
	v := &desk.KeepOrClearView{Best: 2}
	for k := range 6 {
		v.Weeks = append(v.Weeks, desk.ClearWeek{Clear: cal.Of(2027, 1, 5) + cal.Date(7*k), KeepKg: 0.2 * float64(k), NextKg: max(0, 1.2-0.4*float64(max(0, k-2)))})
	}
	return v
}

// The best day is the pen's, and lies where its week does.
func TestBestDayLiesInItsWeek(t *testing.T) {
	v := choice()
	s := KeepScale(v, 360)
	drawn := Keep(v, s, KeepOptions{HeightPX: 90, Label: "keep", Best: "best"})
	at := px(keepLeft + s.X(v.Weeks[2].Clear))
	if !strings.Contains(drawn, `class="pen today" d="M`+at+" ") {
		t.Errorf("no pen line at %s in %s", at, drawn)
	}
	if n := strings.Count(drawn, `class="line`); n != 2 {
		t.Errorf("%d lines, want two", n)
	}
}

// A bar is as long as its worth, from zero.
func TestBarIsAsLongAsItsWorth(t *testing.T) {
	width := func(kg float64) float64 {
		drawn := Worth(kg, 4, WorthOptions{WidthPX: 300, HeightPX: 30, Figure: "x"})
		_, rest, _ := strings.Cut(drawn, `width="`)
		_, rest, _ = strings.Cut(rest, `<rect`)
		_, rest, _ = strings.Cut(rest, `width="`)
		text, _, _ := strings.Cut(rest, `"`)
		w, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	if half, whole := width(2), width(4); half < 0.49*whole || half > 0.51*whole {
		t.Errorf("a bar of 2 kg is %.1f px, of 4 kg %.1f", half, whole)
	}
}
