package space

import (
	"slices"
	"testing"

	"garner/internal/plan"
)

func TestOverFullBed(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 6), planting("b", 10, 6)}, map[string][]int{"a": {100}, "b": {120}})
	got := bed.Overlaps()
	if len(got) != 1 {
		t.Fatalf("%+v", got)
	}
	o := got[0]
	if o.Wrong != OverFull || o.From != on(10) || o.Until != on(100) || o.Planting != "b" || !slices.Equal(o.Plantings, []string{"a", "b"}) || o.Odds != 1 {
		t.Errorf("%+v", o)
	}
	if o.OverM2 < 1.999 || o.OverM2 > 2.001 {
		t.Errorf("over by %v m2, want 2", o.OverM2)
	}
	if o.Mend != on(105) {
		t.Errorf("there is room from %v, want %v: cleared and turned round", o.Mend, on(105))
	}
	if h := bed.Hold("b"); !h.Over {
		t.Error("it is not noted that it lies on ground another holds")
	}
}

// Two follow each other: in the middle year there is room, in three of ten the
// former still stands.
func TestTooEarlyInSomeFutures(t *testing.T) {
	a, b := planting("a", 0, 10), planting("b", 80, 10)
	bed := smallGround(t, []plan.Planting{a, b}, map[string][]int{"a": {60, 60, 60, 70, 70, 70, 80, 90, 90, 100}, "b": {200}})
	got := bed.Overlaps()
	if len(got) != 1 || got[0].Wrong != TooEarly || got[0].Odds != 0.3 || got[0].Planting != "b" || got[0].Mend != on(90) {
		t.Fatalf("%+v", got)
	}
	bed = smallGround(t, []plan.Planting{a, planting("b", 100, 10)}, map[string][]int{"a": {60, 60, 60, 70, 70, 70, 80, 90, 90, 100}, "b": {200}})
	if got := bed.Overlaps(); len(got) != 0 {
		t.Errorf("cleared in all futures, and told: %+v", got)
	}
}

// One that stays to the table's end goes in too early as any other does: before
// the former is cleared, and for less than four weeks.
func TestTooEarlyOfOneThatStays(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 10), planting("b", 90, 10)}, map[string][]int{"a": {100}, "b": {-1}})
	if got := bed.Overlaps(); len(got) != 1 || got[0].Wrong != TooEarly || got[0].Until != on(100) || got[0].Mend != on(105) {
		t.Errorf("%+v", got)
	}
}

// One that is over before the former is cleared does not go in too early: at no
// time is there room for it.
func TestOverFullOfOneThatStandsShortly(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 10), planting("b", 20, 4)}, map[string][]int{"a": {200}, "b": {45}})
	if got := bed.Overlaps(); len(got) != 1 || got[0].Wrong != OverFull || got[0].Until != on(45) || got[0].Mend.IsSet() {
		t.Errorf("%+v", got)
	}
}

// Where the former stays in the late year of ten there is no day to offer.
func TestTooEarlyWithNoDayToOffer(t *testing.T) {
	for name, late := range map[string]int{"never cleared": -1, "cleared months later": 300} {
		bed := smallGround(t, []plan.Planting{planting("a", 0, 10), planting("b", 80, 10)},
			map[string][]int{"a": {60, 60, 60, 70, 70, 70, 70, late, late, late}, "b": {350}})
		if got := bed.Overlaps(); len(got) != 1 || got[0].Wrong != TooEarly || got[0].Mend.IsSet() {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// The day that is offered counts that a guest lies within its host.
func TestMendOfAGuest(t *testing.T) {
	guest := planting("guest", 10, 8)
	guest.Relation, guest.To = plan.Under, "host"
	bed := smallGround(t, []plan.Planting{planting("x", 0, 4), planting("host", 0, 6), guest}, map[string][]int{"x": {90}, "host": {250}, "guest": {60}})
	if got := bed.Overlaps(); len(got) != 1 || got[0].Planting != "guest" || got[0].Mend != on(95) {
		t.Errorf("%+v", got)
	}
}

// Of what goes in after the table nobody knows when it is gone, so nothing is
// wrong with it.
func TestBeyondTheTableNothingIsTold(t *testing.T) {
	const year = 364
	after := planting("c", year+90, 10)
	after.Relation, after.To = plan.Under, "x"
	bed := smallGround(t, []plan.Planting{planting("a", year+10, 10), planting("b", year+60, 10), after}, nil)
	if got := bed.Overlaps(); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// What a planting shares ground with must be there in its time.
func TestPartnerThatIsNotThere(t *testing.T) {
	a, b := planting("a", 0, 5), planting("b", 80, 5)
	b.Relation, b.To = plan.Under, "a"
	bed := smallGround(t, []plan.Planting{a, b}, map[string][]int{"a": {60}, "b": {200}})
	got := bed.Overlaps()
	if len(got) != 1 || got[0].Wrong != NoPartner || got[0].Odds != 1 {
		t.Fatalf("%+v", got)
	}
	b.Date = on(20)
	if got := smallGround(t, []plan.Planting{a, b}, map[string][]int{"a": {60}, "b": {200}}).Overlaps(); len(got) != 0 {
		t.Errorf("it is there, and told: %+v", got)
	}
}

func TestLargerThanItsBed(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 12)}, map[string][]int{"a": {100}})
	if got := bed.Overlaps(); len(got) != 1 || got[0].Wrong != TooLarge || got[0].OverM2 < 1.999 || got[0].OverM2 > 2.001 {
		t.Fatalf("%+v", got)
	}
	if got := total(bed.Hold("a").Pieces); got != 1 {
		t.Errorf("it lies on %v of the bed", got)
	}
}

// A guest takes no ground while its host stands, and holds its own after.
func TestGuestHoldsGroundWhenItsHostIsGone(t *testing.T) {
	host, guest := planting("host", 0, 6), planting("guest", 20, 4)
	guest.Relation, guest.To = plan.Under, "host"
	bed := smallGround(t, []plan.Planting{host, guest}, map[string][]int{"host": {80}, "guest": {150}})
	if g := bed.Hold("guest"); !g.Guest || g.At != bed.Hold("host").At {
		t.Errorf("the guest lies at %v, a guest %v", g.At, g.Guest)
	}
	for day, want := range map[int]float64{30: 4, 90: 6, 160: 10} {
		if got := bed.RoomM2(on(day), on(day+1)); got < want-0.001 || got > want+0.001 {
			t.Errorf("day %d: %v m2 free, want %v", day, got, want)
		}
	}
}

// What goes in under its host before the host does lies on the host's ground.
func TestGuestThatComesFirst(t *testing.T) {
	host, guest := planting("host", 20, 6), planting("guest", 0, 3)
	guest.Relation, guest.To = plan.Between, "host"
	bed := smallGround(t, []plan.Planting{host, guest, planting("x", 5, 4)}, map[string][]int{"host": {100}, "guest": {60}, "x": {100}})
	if got := bed.Overlaps(); len(got) != 0 {
		t.Errorf("%+v", got)
	}
	h, g := bed.Hold("host"), bed.Hold("guest")
	if len(within(g.Pieces, h.Pieces)) != 1 || total(within(g.Pieces, h.Pieces)) < 0.3-speck {
		t.Errorf("the guest lies at %v, its host at %v", g.Pieces, h.Pieces)
	}
}

// A follow-on takes the place of what it follows when that is free, though other
// ground would be free as well.
func TestFollowOnTakesThePlace(t *testing.T) {
	a, b, c := planting("a", 0, 3), planting("b", 0, 3), planting("c", 70, 3)
	c.Relation, c.To = plan.After, "b"
	bed := smallGround(t, []plan.Planting{a, b, c}, map[string][]int{"a": {200}, "b": {66}, "c": {200}})
	if got, want := bed.Hold("c").At, bed.Hold("b").At; got != want {
		t.Errorf("it lies at %v, what it follows at %v", got, want)
	}
}

// Ground of neighbours that comes free at the same time is one gap.
func TestNeighboursThatComeFreeTogetherAreOneGap(t *testing.T) {
	bed := smallGround(t, []plan.Planting{planting("a", 0, 3), planting("b", 0, 3), planting("c", 0, 4)}, map[string][]int{"a": {50}, "b": {50}, "c": {50}})
	gaps := bed.Gaps(on(10), on(365))
	if len(gaps) != 1 || gaps[0].AreaM2 < 9.999 || len(gaps[0].Before) != 3 {
		t.Fatalf("%+v", gaps)
	}
	if got := bed.Gaps(on(10), on(55)); len(got) != 0 {
		t.Errorf("before it is turned round: %+v", got)
	}
}
