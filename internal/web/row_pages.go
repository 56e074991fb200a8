package web

import (
	"cmp"
	"errors"
	"net/http"
	"strconv"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// rowBody is the page on which a row is made or changed.
type rowBody struct {
	Title    string // a key
	Name     string // of the row, when it has one
	New      bool
	Path     string // that the form is sent to
	Back     string
	Remove   string // page that removes the row, empty for a new one
	Hidden   []hiddenField
	Fields   []fieldBody
	HasMore  bool
	MoreOpen bool
	Wrong    int            // things that are wrong
	Faults   []words.Phrase // those of no field
}

// hiddenField goes with a form unseen.
type hiddenField struct{ Name, Value string }

// mountRows names the routes of a table's form.
func (s *Server) mountRows(mux *router, f *rowForm) {
	base := "/" + f.table
	mux.Handle("GET "+base+"/new", s.atHome(func(v *visit) error { return v.newRow(f) }))
	mux.Handle("POST "+base+"/new", s.atHome(func(v *visit) error { return v.saveRow(f, "") }))
	mux.Handle("GET "+base+"/{id}/edit", s.atHome(func(v *visit) error { return v.editRow(f, v.r.PathValue("id")) }))
	mux.Handle("POST "+base+"/{id}/edit", s.atHome(func(v *visit) error { return v.saveRow(f, v.r.PathValue("id")) }))
	mux.Handle("GET "+base+"/{id}/remove", s.atHome(func(v *visit) error { return v.askRemove(f, v.r.PathValue("id")) }))
	mux.Handle("POST "+base+"/{id}/remove", s.atHome(func(v *visit) error { return v.removeRow(f, v.r.PathValue("id")) }))
}

// newRow shows a form with nothing in it but what the address gives.
func (v *visit) newRow(f *rowForm) error {
	values := map[string]string{}
	for _, spec := range f.fields {
		if given := v.query(spec.name); given != "" {
			values[spec.name] = given
		}
	}
	for _, name := range f.carried {
		values[name] = v.query(name)
	}
	return v.showRow(f, rowShown{values: values})
}

// editRow shows a form with a row as it stands.
func (v *visit) editRow(f *rowForm, id string) error {
	row, err := v.office.Row(f.table, id)
	if err != nil {
		return err
	}
	return v.showRow(f, rowShown{id: id, base: row.Version, values: row.Cells})
}

// saveRow writes what was posted, or shows it again with what is wrong.
func (v *visit) saveRow(f *rowForm, id string) error {
	base, err := strconv.ParseInt(v.field("base"), 10, 64)
	if err != nil && v.field("base") != "" {
		return formUnreadable()
	}
	cells, err := v.cellsOf(f)
	if err != nil {
		return err
	}
	if id == "" && f.fixed != nil {
		h, err := v.office.Holding()
		if err != nil {
			return err
		}
		for name, value := range f.fixed(h) {
			cells[name] = value
		}
	}
	if f.fit != nil && id != "" {
		row, err := v.office.Row(f.table, id)
		if err != nil {
			return err
		}
		f.fit(row.Cells, cells)
	}
	kept, err := v.office.Save(v.author(), f.table, id, cells, base)
	var conflict *desk.Conflict
	switch {
	case err == nil:
		if id == "" && kept != nil && len(kept.Changes) > 0 {
			cells["id"] = kept.Changes[0].ID
		}
		v.kept(kept, f.after(v, cells))
		return nil
	case errors.As(err, &conflict):
		return v.showConflict(f, id, cells, conflict)
	}
	faults := listOf(err)
	if faults == nil {
		return err
	}
	return v.showRow(f, rowShown{id: id, base: base, values: cells, faults: faults, entry: v.field("entry")})
}

// listOf returns the faults of a form, nil when the error is of another kind.
func listOf(err error) fault.List {
	var list fault.List
	var one *fault.Error
	switch {
	case errors.As(err, &list):
		return list
	case errors.As(err, &one) && one.Kind != fault.Internal && one.Kind != fault.NotFound:
		return fault.List{one}
	}
	return nil
}

// rowShown is what a form is shown with.
type rowShown struct {
	id     string
	base   int64
	values map[string]string // by column, or as typed
	faults fault.List
	entry  string // the entry it will write, empty: a new one
}

func (v *visit) showRow(f *rowForm, shown rowShown) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := rowBody{Title: "web.new_" + f.table, New: shown.id == "", Path: "/" + f.table + "/new", Back: f.after(v, shown.values)}
	if !b.New {
		b.Title, b.Path = "web.edit_"+f.table, rowPath(f, shown.id)+"/edit"
		if !f.only {
			b.Remove = rowPath(f, shown.id) + "/remove"
		}
		b.Name = v.rowName(f, &desk.RowView{Cells: shown.values}, h)
	}
	switch {
	case b.New && f.table == "crops":
		b.Name = v.rowName(f, &desk.RowView{Cells: shown.values}, h)
	case b.New && f.table == "covers" && shown.values["bed"] != "":
		b.Name = nameOf(bedOptions(h), shown.values["bed"])
	}
	if b.Fields, err = v.fieldsOf(f, &choosing{visit: v, holding: h, id: shown.id}, shown.values, shown.faults); err != nil {
		return err
	}
	for i := range b.Fields {
		b.HasMore = b.HasMore || b.Fields[i].More
		b.MoreOpen = b.MoreOpen || b.Fields[i].More && (len(b.Fields[i].Faults) > 0 || shown.values[b.Fields[i].Name] != "" && b.New)
	}
	b.Wrong = len(shown.faults)
	b.Faults = f.unplaced(shown.faults)
	if b.Hidden, err = v.hiddenOf(f, shown); err != nil {
		return err
	}
	status := http.StatusOK
	if b.Wrong > 0 {
		status = http.StatusUnprocessableEntity
	}
	return v.show(page{Name: "row", Nav: f.nav, Status: status, Body: b})
}

// unplaced are the faults that belong to no field of the form.
func (f *rowForm) unplaced(faults fault.List) []words.Phrase {
	var out []words.Phrase
	for _, e := range faults {
		placed := false
		for i := range f.fields {
			placed = placed || f.fields[i].standsFor(e.At.Column)
		}
		if !placed {
			out = append(out, e.Phrase)
		}
	}
	return out
}

// hiddenOf are the entry a form will write, the version it was shown over and
// the columns that it carries along.
func (v *visit) hiddenOf(f *rowForm, shown rowShown) ([]hiddenField, error) {
	if shown.entry == "" {
		var err error
		if shown.entry, err = v.entry(); err != nil {
			return nil, err
		}
	}
	out := []hiddenField{{"entry", shown.entry}, {"base", strconv.FormatInt(shown.base, 10)}}
	for _, name := range f.carried {
		out = append(out, hiddenField{name, shown.values[name]})
	}
	return out, nil
}

// rowName is what a row is called on a page of its own.
func (v *visit) rowName(f *rowForm, row *desk.RowView, h *holding.Holding) string {
	switch f.table {
	case "plantings":
		return labelOf(row.Cells["crop"], row.Cells["use"]) + ", " + nameOf(bedOptions(h), row.Cells["bed"])
	case "covers":
		return v.named("desk.value_covers.kind.", row.Cells["kind"]) + ", " + nameOf(bedOptions(h), row.Cells["bed"])
	case "crops":
		if row.Cells["parameter"] == "" {
			return ""
		}
		return labelOf(row.Cells["crop"], row.Cells["use"]) + ", " + v.say(parameterTexts+row.Cells["parameter"], nil)
	case "visits":
		return row.Cells["from"]
	case "wants", "gaps_left", "purchases", "members":
		if row.Cells["vegetable"] != "" {
			return row.Cells["vegetable"]
		}
		return wantedName(h, "", row.Cells["group"])
	case "gear":
		return cmp.Or(row.Cells["name"], v.named("desk.value_gear.kind.", row.Cells["kind"]))
	case "holding":
		return "" // the form's own title says all
	case "onhand":
		return labelOf(row.Cells["crop"], row.Cells["use"])
	}
	return row.Cells["name"]
}

func nameOf(options []option, value string) string {
	for _, o := range options {
		if o.Value == value {
			return o.Name
		}
	}
	return value
}

// rowPath is where a row's pages are.
func rowPath(f *rowForm, id string) string { return "/" + f.table + "/" + pathEscaped(id) }
