package web

import (
	"net/http"
	"strconv"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// conflictBody shows what somebody else wrote beside what was about to be
// written.
type conflictBody struct {
	Path, Back string
	Gone       bool // the row was taken away
	Hidden     []hiddenField
	Rows       []conflictRow
}

// conflictRow is one field on both sides.
type conflictRow struct {
	Label         string
	Stands, Yours string
	Differs       bool
}

// showConflict shows both versions of a row. Yours, kept, is written over what
// stands now, and not over anything written later still.
func (v *visit) showConflict(f *rowForm, id string, cells map[string]string, c *desk.Conflict) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	stands, err := v.office.Row(f.table, c.ID)
	if fault.KindOf(err) == fault.NotFound && err != nil {
		stands, err = &desk.RowView{Cells: map[string]string{}}, nil
	}
	if err != nil {
		return err
	}
	b := conflictBody{Path: rowPath(f, c.ID) + "/edit", Back: f.after(v, cells), Gone: c.Stood == nil}
	choose := &choosing{visit: v, holding: h, id: id}
	theirs, err := v.fieldsOf(f, choose, stands.Cells, nil)
	if err != nil {
		return err
	}
	yours, err := v.fieldsOf(f, choose, v.office.Cells(f.table, c.Yours), nil)
	if err != nil {
		return err
	}
	for i := range yours {
		row := conflictRow{Label: yours[i].Label, Stands: theirs[i].Text(), Yours: yours[i].Text()}
		row.Differs = row.Stands != row.Yours
		b.Rows = append(b.Rows, row)
	}
	entry, err := v.entry()
	if err != nil {
		return err
	}
	b.Hidden = []hiddenField{{"entry", entry}, {"base", strconv.FormatInt(stands.Version, 10)}}
	for _, spec := range f.fields {
		b.Hidden = append(b.Hidden, hiddenField{spec.name, v.field(spec.name)})
	}
	for _, name := range f.carried {
		b.Hidden = append(b.Hidden, hiddenField{name, v.field(name)})
	}
	return v.show(page{Name: "conflict", Nav: f.nav, Status: http.StatusConflict, Body: b})
}

// Text is what a field holds as people read it.
func (f fieldBody) Text() string {
	for _, o := range f.Options {
		if o.Value == f.Value {
			return o.Name
		}
	}
	return f.Value
}

// conflictOf is the fault of a row that moved on while something was written over
// it that cannot be asked for again on its own page.
func conflictOf(c *desk.Conflict) *fault.Error {
	return fault.New(fault.Conflict, "web.conflict_moved", words.Args{"id": c.ID})
}
