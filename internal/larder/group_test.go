package larder

import (
	"math"
	"testing"

	"garner/internal/cal"
	"pgregory.net/rapid"
)

// rooted is a group of vegetables, the best liked first.
func rooted(id string, vegetables ...string) Group {
	g := Group{ID: id, Name: id}
	for i, v := range vegetables {
		g.Members = append(g.Members, Member{Vegetable: v, Preference: i + 1})
	}
	return g
}

// grouped is a table of carrots and leeks and a group of both, of which a kg a day
// is wanted; leeks are liked best.
func grouped(days int) Setting {
	in := simple(days, 0, plain)
	in.Vegetables = []string{"carrot", "leek"}
	in.Groups = []Group{rooted("roots", "leek", "carrot")}
	in.Wants = []Want{{ID: "g", Group: "roots", KgPerWeek: 7}}
	return in
}

func standingOf(id, vegetable string, kg float32, days int) *Supply {
	s := supply(id, 0)
	s.Vegetable = vegetable
	for range days {
		s.Standing = append(s.Standing, kg)
	}
	return s
}

// What is liked best is eaten first, the other when it is gone, and a member's own
// want goes before the group's.
func TestAGroupEatsWhatItLikesBest(t *testing.T) {
	in := grouped(5)
	in.Wants = append(in.Wants, Want{ID: "c", Vegetable: "carrot", KgPerWeek: 3.5})
	y := run(t, in, Future{Supplies: []*Supply{standingOf("c", "carrot", 4, 30), standingOf("l", "leek", 2, 30)}})
	same(t, "carrots of their own", y.Courses[0].Fresh, 0.5, 0.5, 0.5, 0.5, 0)
	same(t, "leeks of their own", y.Courses[1].Fresh, 0, 0, 0, 0, 0)
	same(t, "group", y.Courses[2].Fresh, 1, 1, 1, 1, 0)
	same(t, "group short", y.Courses[2].Short, 0, 0, 0, 0, 1)
	if c, l := y.Plantings[0], y.Plantings[1]; math.Abs(float64(c.GroupFresh[0][0])-2) > 1e-6 || math.Abs(float64(l.GroupFresh[0][0])-2) > 1e-6 {
		t.Errorf("the group ate %g kg of carrots and %g of leeks", c.GroupFresh[0][0], l.GroupFresh[0][0])
	}
}

// What goes over within a week is eaten before what is liked better.
func TestAGroupEatsFirstWhatGoesOver(t *testing.T) {
	y := run(t, grouped(4), Future{Supplies: []*Supply{standingOf("c", "carrot", 2, 4), standingOf("l", "leek", 9, 40)}})
	same(t, "group", y.Courses[2].Fresh, 1, 1, 1, 1)
	same(t, "carrots over", y.Courses[0].Over, 0, 0, 0, 0)
	if got := y.Plantings[0].FreshKg; math.Abs(got-2) > 1e-6 {
		t.Errorf("%g kg of the carrots that go over are eaten", got)
	}
}

// With groups nothing is made or mislaid, each row's want is met, bought or short to
// the gram, and what a group ate is what its sources gave it.
func TestGroupsAreAccountedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, anyRoom)
		in.Groups = []Group{rooted("g", "leek", "bean"), rooted("h", "bean", "carrot")}
		for i, id := range []string{"g", "h"} {
			in.Wants = append(in.Wants, Want{ID: id, Group: id, KgPerWeek: rapid.Float64Range(0, 20).Draw(t, "group kg"), BuyKgPerWeek: float64(i)})
		}
		in.Left = []GapLeft{{ID: "l", Group: "g", From: monday + 3, To: monday + cal.Date(rapid.IntRange(3, 20).Draw(t, "left"))}}
		out := drawnRun(t, in, Future{Supplies: drawnSupplies(t)})
		for row, c := range out.Courses {
			for d := range c.Want {
				bought := float32(0)
				if c.Bought != nil {
					bought = c.Bought[d]
				}
				if gap := float64(c.Want[d] - c.Fresh[d] - c.Stored[d] - bought - c.Short[d]); math.Abs(gap) > 1e-5 || min(c.Fresh[d], c.Stored[d], bought, c.Short[d]) < 0 {
					t.Fatalf("row %d, day %d: want less what became of it is %g", row, d, gap)
				}
			}
		}
		agree(t, out)
		groupsAgree(t, out)
	})
}

// groupsAgree holds what groups ate by planting and batch to what they ate by row.
func groupsAgree(t *rapid.T, out *Year) {
	for g := range 2 {
		sum := 0.0
		for i := range out.Plantings {
			sum += total(out.Plantings[i].GroupFresh[g]) + total(out.Plantings[i].GroupStored[g])
		}
		for i := range out.Batches {
			sum += total(out.Batches[i].GroupStored[g])
		}
		c := &out.Courses[3+g]
		if eaten := total(c.Fresh) + total(c.Stored); math.Abs(eaten-sum) > 1e-4*(1+eaten) {
			t.Fatalf("group %d ate %g kg by its row and %g by its sources", g, eaten, sum)
		}
	}
}

// A group that wants nothing changes nothing, to the bit, but for the order in which
// lots end on one day.
func TestAGroupThatWantsNothingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, rapid.Just(1e6))
		f := Future{Supplies: drawnSupplies(t)}
		before := drawnRun(t, in, f)
		in.Groups = []Group{rooted("g", someVegetables...)}
		after := drawnRun(t, in, f)
		for v := range before.Courses {
			for d := range before.Courses[v].Want {
				if before.Courses[v].Fresh[d] != after.Courses[v].Fresh[d] || before.Courses[v].Stored[d] != after.Courses[v].Stored[d] || before.Courses[v].Short[d] != after.Courses[v].Short[d] {
					t.Fatalf("%s, day %d: an idle group changes what is eaten", someVegetables[v], d)
				}
			}
		}
	})
}
