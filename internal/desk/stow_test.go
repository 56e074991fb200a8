package desk_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
)

// A pick into a store is one entry: what was picked, and a batch that leads back
// to its planting; taken back, nothing of it is left.
func TestAPickIsABatch(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	e, err := o.Pick(by("pick"), desk.Pick{Planting: "kal-26", On: newYear, Kg: 2, Store: "freezer", All: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(e.Changes) != 3 || !strings.Contains(said(e), "2 kg") || !strings.Contains(said(e), "Freezer") {
		t.Errorf("%d changes, said %q", len(e.Changes), said(e))
	}
	if _, r := added(e, o, "records"); r["what"] != "cleared" || r["planting"] != "kal-26" {
		t.Errorf("the last record is %v", r)
	}
	_, b := added(e, o, "batches")
	if b["planting"] != "kal-26" || b["crop"] != "kale" || b["store"] != "freezer" || b["stored"] != newYear.String() {
		t.Errorf("the batch is %v", b)
	}
	if b["kg"] >= "2" || b["kg"] < "1" {
		t.Errorf("of 2 kg, %s kg are put in after blanching", b["kg"])
	}
	held, err := o.Held("freezer")
	if err != nil {
		t.Fatal(err)
	}
	if last := held.Batches[len(held.Batches)-1]; last.Planting != "kal-26" || last.PlantingName == "" || last.On.IsSet() {
		t.Errorf("held: %+v", last)
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil {
		t.Fatal(err)
	}
	if export(t, o) != stands {
		t.Error("taken back, the holding is another")
	}
	e, err = o.Pick(by("eaten"), desk.Pick{Planting: "kal-26", On: newYear, Kg: 0.5})
	if err != nil || len(e.Changes) != 1 {
		t.Errorf("eaten at once: %v %v", e, err)
	}
}

// A count of a batch and of the store correct what is held, and the batch goes
// with its counts.
func TestACountCorrectsWhatIsHeld(t *testing.T) {
	o := sampleOffice(t)
	if _, err := o.Count(by("a"), desk.StoreCount{Store: "sand", Batch: "b-carrot", On: newYear, Kg: 8}); err != nil {
		t.Fatal(err)
	}
	e, err := o.Count(by("b"), desk.StoreCount{Store: "rack", On: newYear, Kg: 20})
	if err != nil || !strings.Contains(said(e), "20 kg") {
		t.Fatal(err, said(e))
	}
	held, err := o.Held("sand")
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range held.Batches {
		if b.Batch.ID == "b-carrot" && (b.Stock.Kg != 8 || b.EatenKg < 8 || math.Abs(b.Stock.Kg+b.EatenKg+b.LostKg-20) > 1e-9) {
			t.Errorf("%+v", b)
		}
		if b.Batch.ID == "b-beetroot" && b.On.IsSet() {
			t.Error("the beetroot was not counted")
		}
	}
	rack, err := o.Held("rack")
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(rack.Kg-20) > 1e-9 {
		t.Errorf("%g kg hang on the rack", rack.Kg)
	}
	row, err := o.Row("batches", "b-carrot")
	if err != nil {
		t.Fatal(err)
	}
	if e, err = o.Remove(by("c"), "batches", "b-carrot", row.Version, true); err != nil || len(e.Changes) != 2 {
		t.Errorf("the batch is removed with its count: %v %v", e, err)
	}
}

// What cannot be is told at its field, and nothing is written.
func TestPicksAndCountsThatCannotBe(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	for _, c := range []struct {
		key, field string
		pick       desk.Pick
	}{
		{"desk.pick_nothing", "kg", desk.Pick{On: newYear}},
		{"desk.pick_stored_more", "stored_kg", desk.Pick{On: newYear, Kg: 1, Store: "freezer", StoredKg: 2}},
		{"desk.pick_no_store", "store", desk.Pick{On: newYear, Kg: 1, StoredKg: 1}},
		{"desk.lost_not_kept", "store", desk.Pick{On: newYear, Kg: 1, Store: "rack"}},
		{"desk.lost_less_than_none", "stored_kg", desk.Pick{On: newYear, Kg: 1, Store: "freezer", StoredKg: -1}},
		{"desk.lost_to_come", "date", desk.Pick{On: newYear + 60, Kg: 1}},
		{"desk.lost_before", "date", desk.Pick{On: newYear - 900, Kg: 1}},
	} {
		c.pick.Planting = "kal-26"
		_, err := o.Pick(by(c.key), c.pick)
		if !toldAt(err, c.key, c.field) {
			t.Errorf("want %s at %s, got %v", c.key, c.field, err)
		}
	}
	for _, c := range []struct {
		key, field string
		count      desk.StoreCount
	}{
		{"desk.lost_no_day", "date", desk.StoreCount{Store: "sand", On: cal.None, Kg: 1}},
		{"desk.lost_to_come", "date", desk.StoreCount{Store: "sand", On: newYear + 60, Kg: 1}},
		{"desk.lost_less_than_none", "kg", desk.StoreCount{Store: "sand", On: newYear, Kg: -1}},
		{"desk.count_no_batch", "batch", desk.StoreCount{Store: "sand", Batch: "b-onion", On: newYear, Kg: 1}},
		{"desk.count_before", "date", desk.StoreCount{Store: "sand", Batch: "b-carrot", On: newYear - 300, Kg: 1}},
	} {
		_, err := o.Count(by(c.key), c.count)
		if !toldAt(err, c.key, c.field) {
			t.Errorf("want %s at %s, got %v", c.key, c.field, err)
		}
	}
	if _, err := o.Count(by("x"), desk.StoreCount{Store: "loft", On: newYear, Kg: 1}); fault.KindOf(err) != fault.NotFound {
		t.Errorf("a store that is not there: %v", err)
	}
	if export(t, o) != stands {
		t.Error("something was written")
	}
}

func toldAt(err error, key, field string) bool {
	var list fault.List
	return errors.As(err, &list) && len(list) == 1 && list[0].Phrase.Key == key && list[0].At.Column == field
}

// A count of a whole store from before anything lay in it corrects nothing, and is
// refused with the day from which it would.
func TestACountBeforeAnythingWasStored(t *testing.T) {
	o := sampleOffice(t)
	_, err := o.Count(by("early"), desk.StoreCount{Store: "sand", On: newYear - 2000, Kg: 3})
	var faults fault.List
	if !errors.As(err, &faults) || len(faults) != 1 || faults[0].At.Column != "date" || faults[0].Phrase.Key != "desk.count_before_any" {
		t.Errorf("%v", err)
	}
}

// A change of the household is told by what it does.
func TestWhatIsSaidOfTheHousehold(t *testing.T) {
	o := sampleOffice(t)
	e, err := o.PutInForce(by("force"), "fewer")
	if err != nil || !strings.Contains(said(e), "in force") || !strings.Contains(said(e), "Fewer beans") {
		t.Errorf("%v %q", err, said(e))
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	row, err := o.Row("holding", h.ID)
	if err != nil {
		t.Fatal(err)
	}
	e, err = o.Save(by("kitchen"), "holding", h.ID, map[string]string{"kitchen_h_per_week": "3.5"}, row.Version)
	if err != nil || !strings.Contains(said(e), "3.5 hours") {
		t.Errorf("%v %q", err, said(e))
	}
}
