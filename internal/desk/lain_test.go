package desk_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
)

// What lies in a store already is a batch of no planting, in one entry; pieces weigh what
// they usually do at the table.
func TestWhatLiesThereIsABatch(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	e, err := o.LayIn(by("lain"), desk.Lain{Store: "sand", Crop: "celeriac", Use: "storage", Amount: 6, Pieces: true, Since: newYear - 40})
	if err != nil {
		t.Fatal(err)
	}
	brief, err := o.CropView("celeriac", "storage")
	if err != nil {
		t.Fatal(err)
	}
	held, err := o.Held("sand")
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(held.Batches, func(b desk.HeldBatch) bool { return b.Batch.ID == e.Changes[0].ID })
	if at < 0 {
		t.Fatal("the store does not hold it")
	}
	if last := held.Batches[at]; len(e.Changes) != 1 || last.Planting != "" || last.PlantingName != "" || math.Abs(last.Batch.Kg-6*brief.Brief.TableG/1000) > 1e-3 || !strings.Contains(said(e), "celeriac") {
		t.Errorf("%+v, said %q", last, said(e))
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil || export(t, o) != stands {
		t.Errorf("taken back, the holding is another (%v)", err)
	}
}

// What cannot be is told with all else that is wrong, and nothing is written.
func TestWhatCannotLieInAStore(t *testing.T) {
	o := sampleOffice(t)
	stands := export(t, o)
	good := desk.Lain{Store: "rack", Crop: "onion", Use: "seed", Amount: 5, Since: newYear - 90}
	for key, change := range map[string]func(*desk.Lain){
		"desk.lain_what":        func(l *desk.Lain) { l.Crop = "moonflower" },
		"desk.lain_nothing":     func(l *desk.Lain) { l.Amount = math.NaN() },
		"desk.lain_too_much":    func(l *desk.Lain) { l.Amount = math.Inf(1) },
		"desk.lain_no_pieces":   func(l *desk.Lain) { l.Crop, l.Use, l.Store, l.Pieces = "dry-bean", "table", "shelf", true },
		"desk.lost_no_day":      func(l *desk.Lain) { l.Since = cal.None },
		"desk.lain_to_come":     func(l *desk.Lain) { l.Since = newYear + 60 },
		"desk.lain_where":       func(l *desk.Lain) { l.Store = "loft" },
		"desk.lain_keeps_there": func(l *desk.Lain) { l.Crop, l.Use = "kale", "plant" },
		"desk.lain_keeps_so":    func(l *desk.Lain) { l.Crop, l.Use = "lettuce", "" },
	} {
		l := good
		change(&l)
		_, err := o.LayIn(by(key), l)
		var faults fault.List
		if !errors.As(err, &faults) || !slices.ContainsFunc(faults, func(e *fault.Error) bool { return e.Phrase.Key == key }) {
			t.Errorf("want %s, got %v", key, err)
		}
	}
	any, err := o.LayIn(by("any"), desk.Lain{Store: "rack", Crop: "onion", Amount: 5, Since: newYear - 90})
	if err != nil {
		t.Fatal(err)
	}
	if _, b := added(any, o, "batches"); b["use"] == "" || b["crop"] != "onion" {
		t.Errorf("onions of whatever kind are %v", b)
	}
	if _, err := o.Undo(by("undo"), any.ID); err != nil {
		t.Fatal(err)
	}
	_, err = o.LayIn(by("all"), desk.Lain{Since: cal.None})
	var faults fault.List
	if !errors.As(err, &faults) || len(faults) != 4 {
		t.Errorf("of what, how much, since when and where are told %v", err)
	}
	if export(t, o) != stands {
		t.Error("something was written")
	}
}
