package desk_test

import (
	"fmt"
	"testing"

	"garner/internal/desk"
	"garner/internal/plan"
)

// Wishes are kept in one entry, go with what they name when it goes, and come back when
// that is taken back; the same wishes again are no entry.
func TestWishesAreKeptAndGoWithWhatTheyName(t *testing.T) {
	o := sampleOffice(t)
	before, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	pins, err := o.DraftPins()
	if err != nil || len(pins) == 0 {
		t.Fatal(err)
	}
	beds, err := o.Rows("beds")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	by := func() desk.Author {
		n++
		return desk.Author{Entry: fmt.Sprint("wish-entry-", n), At: "2027-01-04T09:00:00Z"}
	}
	bed := beds[len(beds)-1]
	asked := []plan.Wish{{Kind: plan.Pin, Planting: pins[0].Planting}, {Kind: plan.Forbid, Crop: "carrot", Bed: bed.ID}, {Kind: plan.Hours, Hours: 0}}
	kept, err := o.KeepWishes(by(), asked)
	if err != nil || len(kept.Changes) != 3 {
		t.Fatal(kept, err)
	}
	if again, err := o.KeepWishes(by(), asked); err != nil || again.ID != "" {
		t.Errorf("the same again is %+v, %v", again, err)
	}
	for _, bad := range []plan.Wish{{Kind: plan.Pin}, {Kind: plan.Pin, Planting: "none"}, {Kind: plan.Forbid, Crop: "moonflower"}, {Kind: plan.Hours, Hours: 169}, {Kind: "dance"}} {
		if _, err := o.KeepWishes(by(), append(asked[:2:2], bad)); err == nil {
			t.Errorf("%+v was kept", bad)
		}
	}
	row, err := o.Row("beds", bed.ID)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.Remove(by(), "beds", bed.ID, row.Version, false); err == nil {
		t.Error("a bed that a wish names was removed without a word")
	}
	gone, err := o.Remove(by(), "beds", bed.ID, row.Version, true)
	if err != nil {
		t.Fatal(err)
	}
	if left, err := o.Rows("wishes"); err != nil || len(left) != 2 {
		t.Errorf("left are %v, %v", left, err)
	}
	for _, entry := range []string{gone.ID, kept.ID} {
		if _, err := o.Undo(by(), entry); err != nil {
			t.Fatal(err)
		}
	}
	after, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range before {
		if string(after[name]) != string(text) {
			t.Errorf("%s is not as it was", name)
		}
	}
}

// Hours that are asked for anew keep the row they stand in, and a wish that is told twice is kept once.
func TestAWishIsKeptOnce(t *testing.T) {
	o := sampleOffice(t)
	for n, hours := range []float64{7, 6} {
		by := desk.Author{Entry: fmt.Sprint("hours-entry-", n), At: "2027-01-04T09:00:00Z"}
		forbid := plan.Wish{Kind: plan.Forbid, Crop: "leek"}
		if _, err := o.KeepWishes(by, []plan.Wish{forbid, {Kind: plan.Hours, Hours: hours}, forbid}); err != nil {
			t.Fatal(err)
		}
	}
	rows, err := o.Rows("wishes")
	if err != nil || len(rows) != 2 || rows[0].ID != "wish-1" || rows[1].ID != "wish-2" || rows[1].Cells["hours"] != "6" || rows[0].Version == rows[1].Version {
		t.Errorf("%+v, %v", rows, err)
	}
}
