package larder

import (
	"testing"

	"garner/internal/cal"
	"pgregory.net/rapid"
)

// What may be bought over given days is bought on these days alone, of what lacks and at
// most a seventh of a week's a day; spans add up, to each other and to the want's own.
func TestAPurchaseIsOfItsDays(t *testing.T) {
	in := simple(6, 1, plain, sand(50))
	in.Batches = []Opening{carrots("b", 2, monday)}
	in.Purchases = []Purchase{{Vegetable: "carrot", From: monday + 1, To: monday + 3, KgPerWeek: 3.5}, {Vegetable: "carrot", From: monday + 3, To: monday + 90, KgPerWeek: 1.75}}
	c := run(t, in, Future{}).Courses[0]
	same(t, "stored", c.Stored, 1, 1, 0, 0, 0, 0)
	same(t, "bought", c.Bought, 0, 0, 0.5, 0.75, 0.25, 0.25)
	same(t, "short", c.Short, 0, 0, 0.5, 0.25, 0.75, 0.75)
	in.Wants[0].BuyKgPerWeek = 1.75
	same(t, "bought", run(t, in, Future{}).Courses[0].Bought, 0, 0, 0.75, 1, 0.5, 0.5)
	in.Left = []GapLeft{{Vegetable: "carrot", From: monday + 3, To: monday + 3}}
	same(t, "bought", run(t, in, Future{}).Courses[0].Bought, 0, 0, 0.75, 0, 0.5, 0.5)
}

// A purchase only renames what lacks: what is eaten of the garden and the stores stays
// as it was, and outside its days all does.
func TestAPurchaseChangesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, rapid.Just(1e6))
		f := Future{Supplies: drawnSupplies(t)}
		before := drawnRun(t, in, f)
		p := Purchase{Vegetable: rapid.SampledFrom(someVegetables).Draw(t, "bought"), From: monday + cal.Date(rapid.IntRange(-10, 90).Draw(t, "from")),
			KgPerWeek: rapid.Float64Range(0.1, 9).Draw(t, "kg")}
		p.To = p.From + cal.Date(rapid.IntRange(0, 60).Draw(t, "for"))
		in.Purchases = append(in.Purchases, p)
		after := drawnRun(t, in, f)
		for v := range after.Courses {
			a, b := &after.Courses[v], &before.Courses[v]
			for d := range a.Want {
				if a.Fresh[d] != b.Fresh[d] || a.Stored[d] != b.Stored[d] || a.Over[d] != b.Over[d] {
					t.Fatalf("day %d of %s: other food is eaten", d, in.Vegetables[v])
				}
				within := in.Vegetables[v] == p.Vegetable && p.Covers(in.First+cal.Date(d))
				if a.Short[d] > b.Short[d]+1e-6 || !within && a.Short[d] != b.Short[d] {
					t.Fatalf("day %d of %s: %g lack, %g before", d, in.Vegetables[v], a.Short[d], b.Short[d])
				}
			}
		}
	})
}
