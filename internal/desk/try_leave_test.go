package desk_test

import (
	"reflect"
	"testing"

	"garner/internal/desk"
	"garner/internal/plan"
)

// leaving is the change that leaves the next gap of a row of the table.
func leaving(r *desk.RibbonView) plan.Change {
	return plan.Change{Action: desk.LeaveAction, Planting: r.Name, Field: r.Gap.First.String(), Value: desk.WriteSpan(r.Gap.First, r.Gap.Last)}
}

// A gap that is left is no gap, the others stand as they were, and what was
// written can be taken back. Left twice it is written once.
func TestAGapIsLeftAndTakenBack(t *testing.T) {
	o := office(t)
	before, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	at := -1
	for i := range before.Vegetables {
		if before.Vegetables[i].Gap != nil {
			at = i
		}
	}
	gap := *before.Vegetables[at].Gap
	try := []plan.Change{leaving(&before.Vegetables[at])}
	after, err := o.TableView(try)
	if err != nil {
		t.Fatal(err)
	}
	if now := after.Vegetables[at].Gap; now != nil && now.First <= gap.Last {
		t.Errorf("the gap of %+v stays: %+v", gap, now)
	}
	if lacks, lacked := after.Vegetables[at].GapKg, before.Vegetables[at].GapKg; lacks >= lacked {
		t.Errorf("%g kg lack, %g did", lacks, lacked)
	}
	start := export(t, o)
	standing, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	stood := len(standing.GapsLeft)
	for _, name := range []string{"leave a gap", "leave it again"} {
		if err := o.KeepTry(by(name), try); err != nil {
			t.Fatal(err)
		}
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if last := h.GapsLeft[len(h.GapsLeft)-1]; len(h.GapsLeft) != stood+1 || last.From != gap.First || last.To != gap.Last {
		t.Fatalf("left are %+v", h.GapsLeft)
	}
	kept, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(kept.Vegetables, after.Vegetables) {
		t.Error("kept, the table is not the one that was tried")
	}
	if _, err := o.Undo(by("undo"), by("leave a gap").Entry); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(start, export(t, o)) {
		t.Error("taken back, the holding is not what it was")
	}
}

// What cannot be left is told, also when it stands in an address.
func TestAGapThatCannotBeLeftIsTold(t *testing.T) {
	for _, value := range []string{"", "2027-04-20", "2027-06-02;2027-04-20", "spring;summer"} {
		if c, wrong := desk.ReadLeave("onion", value); wrong == nil || wrong.Phrase.Key != "desk.try_leave" {
			t.Errorf("%q is taken for %+v", value, c)
		}
	}
	o := office(t)
	err := o.KeepTry(by("leave nothing"), []plan.Change{{Action: desk.LeaveAction, Planting: "dragon", Value: "2027-04-20;2027-06-02"}})
	if err == nil {
		t.Error("a gap of no vegetable is left")
	}
}
