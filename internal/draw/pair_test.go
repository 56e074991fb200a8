package draw

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
)

// examplePair is a crop of ten weeks over one that comes up in the third.
func examplePair() []desk.PairWeek {
	out := make([]desk.PairWeek, 10)
	for i := range out {
		out[i] = desk.PairWeek{Monday: exampleFrom + cal.Date(7*i), Upper: 0.09 * float64(i)}
		if i >= 3 {
			out[i].Lower, out[i].Lit = 0.05*float64(i), true
			out[i].Light = 1 - 0.08*float64(i)
			out[i].Poor, out[i].Good = out[i].Light-0.1, out[i].Light+0.1
		}
	}
	return out
}

// The upper crop's leaf stands over the ground's line and the lower's hangs below
// it, and what light there is is drawn only where there is leaf to see it.
func TestPairHangsBelowTheLine(t *testing.T) {
	weeks := examplePair()
	s := PairScale(weeks, 900)
	up := silhouette(weeks, s, 90, -70, func(w *desk.PairWeek) float64 { return w.Upper })
	down := silhouette(weeks, s, 90, 70, func(w *desk.PairWeek) float64 { return w.Lower })
	if !strings.HasPrefix(up, "M90 90") || !strings.HasPrefix(down, "M270 90") {
		t.Errorf("the silhouettes begin at %.12s and %.12s", up, down)
	}
	if !strings.Contains(up[7:], "-") || strings.Contains(strings.SplitN(down[7:], "h", 2)[0], "-") {
		t.Errorf("the upper's leaf goes %s, the lower's %s", up, down)
	}
	if line := litLine(weeks, s, 200, 70, func(w *desk.PairWeek) float64 { return w.Light }); !strings.HasPrefix(line, "M308.6 ") {
		t.Errorf("the light is drawn from %.12s", line)
	}
	if got := Pair(nil, PairScale(nil, 900), PairOptions{HeightPX: 70}); !strings.Contains(got, "<svg") {
		t.Errorf("a pair without weeks: %s", got)
	}
}
