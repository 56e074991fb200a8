package growth

import "testing"

// Common practice, no source: buckwheat closes over within five weeks of summer,
// gives nothing, flowers and has run its course in four months.
func TestGreenManureCoversAndGivesNothing(t *testing.T) {
	u := bookUse(t, "buckwheat", "cover")
	p := Prepare(u, FromSeed, true)
	if p.Flows() || p.Stands() {
		t.Error("a green manure is to be picked")
	}
	c := steady(u, FromSeed, 120, 13, 25, 20, 15)
	if count(c.stand) != 0 || count(c.yield) != 0 {
		t.Error("a green manure gave food")
	}
	if c.last.Stage != Over || c.last.End != Covered {
		t.Errorf("ended %s, %s", c.last.Stage, c.last.End)
	}
	soon := steady(u, FromSeed, 35, 13, 25, 20, 15)
	if soon.last.Stage != Ready || soon.last.Leaf < coveringLeaf {
		t.Errorf("after five weeks %s with a leaf area of %g", soon.last.Stage, soon.last.Leaf)
	}
	if s := soon.last; s.FreshKgM2(p) != 0 || s.PieceG(p) != 0 {
		t.Error("a green manure weighs something at the table")
	}
}

// Turned in before it covers, a green manure has come to nothing; after, it has
// served.
func TestGreenManureTurnedIn(t *testing.T) {
	u := bookUse(t, "winter-rye", "cover")
	early := steady(u, FromSeed, 20, 5, 14, 10, 12).last
	early.Clear()
	if early.Stage != Dead {
		t.Errorf("turned in at once: %s", early.Stage)
	}
	grown := steady(u, FromSeed, 120, 5, 14, 10, 12).last
	grown.Clear()
	if grown.Stage != Over || grown.End != Covered {
		t.Errorf("turned in when it covered: %s, %s", grown.Stage, grown.End)
	}
}
