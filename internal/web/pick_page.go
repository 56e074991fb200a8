package web

import (
	"net/http"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// pickBody is the page on which a pick is told.
type pickBody struct {
	Name       string
	Path, Back string
	Hidden     []hiddenField
	Fields     []fieldBody
	All        bool
	NoStore    bool // it keeps in none of the stores
	Wrong      int
	Faults     []words.Phrase       // those of no field
	Prepare    []desk.PreparingView // by store
}

// pickFields are what the form of a pick sends.
var pickFields = []string{"date", "kg", "store", "stored_kg", "all"}

// pickRoutes names the pages on which picks and counts are told.
func (s *Server) pickRoutes(mux *router) {
	mux.Handle("GET /planting/{id}/pick", s.atHome(pickPage))
	mux.Handle("POST /planting/{id}/pick", s.atHome(pickPosted))
	mux.Handle("GET /stores/{id}", s.atHome(heldPage))
	mux.Handle("POST /stores/{id}/count", s.atHome(countPosted))
}

// pickPage shows the form with what is likely: today, and the planting's store.
func pickPage(v *visit) error {
	view, err := v.office.LossView(v.r.PathValue("id"))
	if err != nil {
		return err
	}
	typed := lossTyped{"date": view.Today.String()}
	for _, s := range view.Stores {
		if s.ID == view.Store {
			typed["store"] = s.ID
		}
	}
	return v.showPick(view, typed, nil)
}

// pickPosted writes a pick, or shows the form again with what is wrong.
func pickPosted(v *visit) error {
	id := v.r.PathValue("id")
	typed := lossTyped{}
	for _, name := range pickFields {
		typed[name] = strings.TrimSpace(v.field(name))
	}
	kept, err := v.writePick(id, typed)
	if err == nil {
		v.kept(kept, plantingPath(id))
		return nil
	}
	faults := listOf(err)
	if faults == nil {
		return err
	}
	view, err := v.office.LossView(id)
	if err != nil {
		return err
	}
	return v.showPick(view, typed, faults)
}

func (v *visit) writePick(id string, typed lossTyped) (*desk.KeptEntry, error) {
	r := lossReader{typed: typed}
	if typed["kg"] == "" {
		r.wrong("kg", "desk.pick_nothing") // with all else that is wrong
	}
	p := desk.Pick{Planting: id, On: r.date("date"), Kg: r.number("kg"), Store: typed["store"], StoredKg: r.number("stored_kg"), All: typed["all"] != ""}
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	return v.office.Pick(v.author(), p)
}

func (v *visit) showPick(view *desk.LossView, typed lossTyped, faults fault.List) error {
	b := &pickBody{Name: capital(view.Name), Path: plantingPath(view.Planting) + "/pick", Back: plantingPath(view.Planting),
		All: typed["all"] != "", Wrong: len(faults)}
	b.Fields = []fieldBody{v.toldField("pick", "kg", kindNumber, typed, true), v.toldField("pick", "date", kindDate, typed, true),
		v.toldField("pick", "store", kindChoice, typed, false), v.toldField("pick", "stored_kg", kindNumber, typed, false)}
	if b.NoStore = len(view.Stores) == 0; b.NoStore {
		b.Fields = b.Fields[:2]
	}
	b.Fields[0].Unit = v.say("web.unit_kg", nil)
	if !b.NoStore {
		b.Fields[3].Unit = v.say("web.unit_kg", nil)
		b.Fields[2].Options = []option{{"", v.say("web.pick_no_store", nil)}}
		for _, s := range view.Stores {
			b.Fields[2].Options = append(b.Fields[2].Options, option{s.ID, s.Name})
			if len(s.Prepare) > 0 {
				b.Prepare = append(b.Prepare, desk.PreparingView{Names: []string{s.Name}, Steps: s.Prepare})
			}
		}
	}
	b.Faults = placed(b.Fields, faults)
	var err error
	if b.Hidden, err = v.entryOf(); err != nil {
		return err
	}
	return v.show(page{Name: "pick", Nav: "plantings", Status: statusOf(faults), Body: b})
}

// toldField is a field of a form with its label and hint, and what was typed.
func (v *visit) toldField(form, name, kind string, typed lossTyped, must bool) fieldBody {
	f := fieldBody{Name: name, Label: v.named("web.label_"+form+"_", name), Kind: kind, Value: typed[name], Must: must}
	if key := "web.hint_" + form + "_" + name; v.words.Has(key) {
		f.Hint = v.say(key, nil)
	}
	return f
}

// placed brings faults to their fields and returns those of no field.
func placed(fields []fieldBody, faults fault.List) (others []words.Phrase) {
	for _, e := range faults {
		found := false
		for i := range fields {
			if fields[i].Name == e.At.Column {
				fields[i].Faults = append(fields[i].Faults, e.Phrase)
				found = true
			}
		}
		if !found {
			others = append(others, e.Phrase)
		}
	}
	return others
}

// entryOf is the entry that a form will write: the one it was sent with, else a
// new one.
func (v *visit) entryOf() ([]hiddenField, error) {
	entry := v.field("entry")
	if entry == "" {
		var err error
		if entry, err = v.entry(); err != nil {
			return nil, err
		}
	}
	return []hiddenField{{"entry", entry}}, nil
}

// statusOf is the answer's status: a form with faults was not taken.
func statusOf(faults fault.List) int {
	if len(faults) > 0 {
		return http.StatusUnprocessableEntity
	}
	return http.StatusOK
}
