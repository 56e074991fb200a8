package exchange

import (
	"strings"
	"testing"
)

// A planting that follows one in another bed is only warned of; a moved one may
// come from there.
func TestAfterInAnotherBedIsWarnedOf(t *testing.T) {
	for relation, warned := range map[string]int{"after,p5": 1, "moved,p5": 0, "after,p1": 0} {
		files := hand(t)
		files["plantings.csv"] = strings.Replace(files["plantings.csv"], "after,p1", relation, 1)
		_, report := CheckFolder(inFolder(files), testBook(t))
		if len(report.Faults) != 0 || len(report.Warnings) != warned {
			t.Errorf("%s: faults %v, warnings %v", relation, report.Faults, report.Warnings)
		}
		for _, w := range report.Warnings {
			if w.Phrase.Key != "exchange.after_other_bed" || w.At.Row != 3 || w.At.Column != "to" {
				t.Errorf("%s: %v", relation, w)
			}
		}
	}
}

// A draft that makes a planting another one, moved, is told at its change when
// that other is not in the ground by then.
func TestADraftMovesWhatIsInTheGround(t *testing.T) {
	files := hand(t)
	change(t, files, "plantings.csv", "after,p1", "moved,p1")
	change(t, files, "changes.csv", "remove,p4,,", "set,p2,to,p3")
	_, report := CheckFolder(inFolder(files), testBook(t))
	if got := report.Faults; len(got) != 1 || got[0].Phrase.Key != "exchange.moved_before" || got[0].At.File != "changes.csv" || got[0].At.Row != 4 {
		t.Errorf("%v", got)
	}
}
