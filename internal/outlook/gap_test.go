package outlook

import "testing"

// A gap that is short in every year is as long in the good year as in the poor one,
// however near another gap lies.
func TestGapsNearByAreCountedApart(t *testing.T) {
	w := &Weekly{}
	for week := range 20 {
		short := 1.0
		if week >= 8 && week < 11 {
			short = 0
		}
		w.Want, w.Short, w.GapChance = append(w.Want, 1), append(w.Short, short), append(w.GapChance, short)
	}
	w.Members = []Member{{Short: w.Short}, {Short: w.Short}}
	gaps := (&Table{}).Gaps(w)
	if len(gaps) != 2 {
		t.Fatalf("%d gaps", len(gaps))
	}
	for _, g := range gaps {
		if g.Good != g.Weeks || g.Poor != g.Weeks {
			t.Errorf("%d weeks short in every year are told as %d at best and %d in a poor year", g.Weeks, g.Good, g.Poor)
		}
	}
}
