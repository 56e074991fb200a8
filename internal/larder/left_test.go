package larder

import (
	"testing"

	"garner/internal/cal"
	"pgregory.net/rapid"
)

// In a gap that is left nothing is wanted, nothing lacks, and what is stored waits
// for after it.
func TestAGapLeftWantsNothing(t *testing.T) {
	in := simple(6, 1, plain, sand(50))
	in.Batches = []Opening{carrots("b", 3, monday)}
	in.Left = []GapLeft{{ID: "l", Vegetable: "carrot", From: monday + 1, To: monday + 2}}
	c := run(t, in, Future{}).Courses[0]
	same(t, "want", c.Want, 1, 0, 0, 1, 1, 1)
	same(t, "stored", c.Stored, 1, 0, 0, 1, 1, 0)
	same(t, "short", c.Short, 0, 0, 0, 0, 0, 1)
}

// A span may reach over both ends of the table.
func TestAGapLeftReachesBeyondTheTable(t *testing.T) {
	in := simple(3, 1, plain)
	in.Left = []GapLeft{{ID: "l", Vegetable: "carrot", From: monday - 40, To: monday}, {ID: "m", Vegetable: "carrot", From: monday + 2, To: monday + 90}}
	same(t, "short", run(t, in, Future{}).Courses[0].Short, 0, 1, 0)
}

// Leaving a gap never makes more lack over the table, of it or of another
// vegetable, while no store is full.
func TestLeavingAGapTakesNothingElsewhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, rapid.Just(1e6))
		f := Future{Supplies: drawnSupplies(t)}
		before := drawnRun(t, in, f)
		left := GapLeft{ID: "l", Vegetable: rapid.SampledFrom(someVegetables).Draw(t, "left"), From: monday + cal.Date(rapid.IntRange(-10, 90).Draw(t, "from"))}
		left.To = left.From + cal.Date(rapid.IntRange(0, 60).Draw(t, "for"))
		in.Left = []GapLeft{left}
		after := drawnRun(t, in, f)
		for v := range after.Courses {
			was, is := total(before.Courses[v].Short), total(after.Courses[v].Short)
			if is > was*(1+1e-6)+1e-4 {
				t.Fatalf("%s: short %g kg with the gap left, %g without", someVegetables[v], is, was)
			}
		}
	})
}
