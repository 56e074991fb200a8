package larder

import (
	"math"
	"testing"

	"garner/internal/cal"
	"pgregory.net/rapid"
)

// Of what lacks so much is bought as may be, and only the rest is short.
func TestWhatMayBeBoughtIsNotShort(t *testing.T) {
	in := simple(4, 1, plain, sand(50))
	in.Wants[0].BuyKgPerWeek = 7 * 0.25
	in.Batches = []Opening{carrots("b", 1.9, monday)}
	c := run(t, in, Future{}).Courses[0]
	same(t, "stored", c.Stored, 1, 0.9, 0, 0)
	same(t, "bought", c.Bought, 0, 0.1, 0.25, 0.25)
	same(t, "short", c.Short, 0, 0, 0.75, 0.75)
}

// Two guests beside two eaters double the want, all away leave none, and both at
// once add up.
func TestVisitsScaleTheWant(t *testing.T) {
	in := simple(6, 1, plain)
	in.Eaters = 2
	in.Visits = []Visit{{ID: "g", From: monday + 1, To: monday + 3, Eaters: 2}, {ID: "a", From: monday + 3, To: monday + 4, Eaters: -2}}
	same(t, "want", run(t, in, Future{}).Courses[0].Want, 1, 2, 2, 1, 0, 1)
}

// What may be bought goes with who is there, as what is wanted does.
func TestVisitsScaleWhatMayBeBought(t *testing.T) {
	in := simple(3, 1, plain)
	in.Wants[0].BuyKgPerWeek = 7 * 0.25
	in.Eaters, in.Visits = 2, []Visit{{ID: "g", From: monday + 1, To: monday + 1, Eaters: 2}}
	c := run(t, in, Future{}).Courses[0]
	same(t, "bought", c.Bought, 0.25, 0.5, 0.25)
	same(t, "short", c.Short, 0.75, 1.5, 0.75)
}

// A vegetable is a floor when one of its wants is, and nice to have when all are.
func TestImportanceOfSeveralWants(t *testing.T) {
	for _, c := range []struct {
		held []Importance
		want Importance
	}{{nil, ""}, {[]Importance{""}, ""}, {[]Importance{Nice}, Nice}, {[]Importance{Nice, ""}, ""}, {[]Importance{"", Nice}, ""}, {[]Importance{Nice, Floor}, Floor}} {
		wants := []Want{{Vegetable: "leek", KgPerWeek: 1, Importance: Nice}, {Vegetable: "carrot", Importance: Floor}}
		for _, h := range c.held {
			wants = append(wants, Want{Vegetable: "carrot", KgPerWeek: 1, Importance: h})
		}
		if got := ImportanceOf(wants, "carrot", ""); got != c.want {
			t.Errorf("wants held to as %v come to %q", c.held, got)
		}
	}
}

// More eaters never want less of anything, and never leave less of it short.
func TestMoreEatersNeverWantLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, rapid.Just(1e6))
		in.Eaters = 3
		f := Future{Supplies: drawnSupplies(t)}
		before := drawnRun(t, in, f)
		from := monday + cal.Date(rapid.IntRange(-10, 90).Draw(t, "from"))
		in.Visits = []Visit{{ID: "g", From: from, To: from + cal.Date(rapid.IntRange(0, 40).Draw(t, "for")), Eaters: rapid.Float64Range(0, 9).Draw(t, "guests")}}
		after := drawnRun(t, in, f)
		for v := range after.Courses {
			for d := range after.Courses[v].Want {
				if after.Courses[v].Want[d] < before.Courses[v].Want[d] {
					t.Fatalf("%s, day %d: %g wanted with guests, %g without", someVegetables[v], d, after.Courses[v].Want[d], before.Courses[v].Want[d])
				}
			}
			if was, is := total(before.Courses[v].Short), total(after.Courses[v].Short); is < was*(1-1e-6)-1e-4 {
				t.Fatalf("%s: short %g kg with guests, %g without", someVegetables[v], is, was)
			}
		}
	})
}

// Buying what lacks changes nothing but how it is called: what is eaten is the
// same to the bit, and bought and short make up what was short.
func TestBuyingOnlyRenamesWhatLacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, anyRoom)
		f := Future{Supplies: drawnSupplies(t)}
		before := drawnRun(t, in, f)
		for i := range in.Wants {
			in.Wants[i].BuyKgPerWeek = rapid.Float64Range(0, 9).Draw(t, "buy")
		}
		after := drawnRun(t, in, f)
		for v := range after.Courses {
			was, is := &before.Courses[v], &after.Courses[v]
			for d := range was.Want {
				bought := float32(0)
				if is.Bought != nil {
					bought = is.Bought[d]
				}
				if was.Fresh[d] != is.Fresh[d] || was.Stored[d] != is.Stored[d] || was.Over[d] != is.Over[d] {
					t.Fatalf("%s, day %d: buying changes what is eaten", someVegetables[v], d)
				}
				if gap := float64(was.Short[d] - is.Short[d] - bought); math.Abs(gap) > 1e-5 || bought < 0 || is.Short[d] < 0 {
					t.Fatalf("%s, day %d: short %g, with %g bought %g", someVegetables[v], d, was.Short[d], bought, is.Short[d])
				}
			}
		}
	})
}
