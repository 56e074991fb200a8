package web

import (
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// heldBody is the page of what lies in a store.
type heldBody struct {
	*desk.HeldView
	Says         string
	Path, Change string
	Already      string // where what lies in it already is noted
	Ask          bool   // the count is far above what was put in, and asked about
	Hidden       []hiddenField
	Fields       []fieldBody // of a count
	Wrong        int
	Faults       []words.Phrase // those of no field
}

// heldPage shows what is known to lie in a store, with the form of a count.
func heldPage(v *visit) error { return v.showHeld(nil, nil) }

// countPosted writes a count, or shows the store again with what is wrong.
func countPosted(v *visit) error {
	typed := lossTyped{}
	for _, name := range []string{"batch", "kg", "date", sureField} {
		typed[name] = strings.TrimSpace(v.field(name))
	}
	kept, err := v.writeCount(typed)
	if err == nil {
		v.kept(kept, storePath(v.r.PathValue("id")))
		return nil
	}
	if faults := listOf(err); faults != nil {
		return v.showHeld(typed, faults)
	}
	return err
}

func (v *visit) writeCount(typed lossTyped) (*desk.KeptEntry, error) {
	r := lossReader{typed: typed}
	if typed["kg"] == "" {
		r.wrong("kg", "web.loss_number") // nothing is there only when that was written
	}
	c := desk.StoreCount{Store: v.r.PathValue("id"), Batch: typed["batch"], On: r.date("date"), Kg: r.number("kg"), Sure: typed[sureField] != ""}
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	return v.office.Count(v.author(), c)
}

func (v *visit) showHeld(typed lossTyped, faults fault.List) error {
	view, err := v.office.Held(v.r.PathValue("id"))
	if err != nil {
		return err
	}
	if typed == nil {
		typed = lossTyped{"date": view.Today.String()}
	}
	path := storePath(view.Store.ID)
	b := &heldBody{HeldView: view, Path: path + "/count", Change: path + "/edit", Already: lainPath(view.Store.ID), Wrong: len(faults)}
	b.Says = v.say("web.held_says", words.Args{"method": capital(v.named("desk.value_stores.method.", view.Store.Method)),
		"kg": view.Kg, "capacity": view.Store.Holds()})
	b.Fields = []fieldBody{v.toldField("count", "batch", kindChoice, typed, false), v.toldField("count", "kg", kindNumber, typed, true),
		v.toldField("count", "date", kindDate, typed, true)}
	b.Fields[0].Options = []option{{"", v.say("web.held_whole", nil)}}
	for _, h := range view.Batches {
		b.Fields[0].Options = append(b.Fields[0].Options, option{h.Batch.ID, v.say("web.held_option", words.Args{"name": capital(h.Name), "date": h.Stored})})
	}
	b.Fields[1].Unit = v.say("web.unit_kg", nil)
	for i, e := range faults {
		if e.At.Column == sureField { // told beside the weight, with a tick to take it
			b.Ask = true
			faults[i] = e.In(fault.Place{Column: "kg"})
		}
	}
	b.Faults = placed(b.Fields, faults)
	if b.Hidden, err = v.entryOf(); err != nil {
		return err
	}
	return v.show(page{Name: "held", Nav: "stores", Status: statusOf(faults), Body: b})
}

// sureField is the tick that a count far above what was put in is no slip.
const sureField = "sure"

// storePath is where the page of a store is.
func storePath(id string) string { return "/stores/" + pathEscaped(id) }
