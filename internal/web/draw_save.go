package web

import (
	"errors"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// drawSave writes what was changed of a thing on a drawing: the fields that were
// sent, and the step of the button that was pressed.
func drawSave(v *visit) error {
	table, id := v.r.PathValue("table"), v.r.PathValue("id")
	f, err := drawnForm(table)
	if err != nil {
		return err
	}
	at := v.drawnAt()
	if table != "sites" {
		at.pick = table + "/" + id
	}
	base, err := v.base()
	if err != nil {
		return err
	}
	row, err := v.office.Row(table, id)
	if err != nil {
		return err
	}
	cells, err := v.sentOf(f)
	if err != nil {
		return err
	}
	typed := &drawnTyped{table: table, id: id, base: base, cells: cells}
	kept, err := v.keepDrawn(typed, row)
	var conflict *desk.Conflict
	switch {
	case err == nil:
		v.kept(kept, at.path())
		return nil
	case errors.As(err, &conflict):
		typed.base = row.Version
		typed.faults = fault.List{fault.New(fault.Conflict, "web.draw_changed_meanwhile", words.Args{"name": row.Cells["name"]})}
		return v.showDrawing(at, typed, nil)
	}
	if typed.faults = listOf(err); typed.faults == nil {
		return err
	}
	return v.showDrawing(at, typed, nil)
}

// sentOf reads the fields of a form that were sent. What a script sends of a
// thing it moved is not the whole form.
func (v *visit) sentOf(f *rowForm) (map[string]string, error) {
	all, err := v.cellsOf(f)
	if err != nil {
		return nil, err
	}
	for name := range all {
		if !v.r.PostForm.Has(name) {
			delete(all, name)
		}
	}
	for _, name := range []string{"cut_length", "cut_width", "cut_corner"} {
		if v.r.PostForm.Has(name) {
			all[name] = v.field(name)
		}
	}
	return all, nil
}

// keepDrawn takes the step that was asked for and saves the row.
func (v *visit) keepDrawn(typed *drawnTyped, row *desk.RowView) (*desk.KeptEntry, error) {
	t := &drawnTurn{row: row.Cells, cells: map[string]string{}}
	for name, cell := range typed.cells {
		if name != "cut_length" && name != "cut_width" && name != "cut_corner" {
			t.cells[name] = cell
		}
	}
	h, err := v.office.Holding()
	if err != nil {
		return nil, err
	}
	if err := t.take(v.field("do"), typed.cells, h); err != nil {
		return nil, err
	}
	if typed.table == "sites" {
		if wrong := t.bothSides(); wrong != nil {
			return nil, fault.List{wrong}
		}
	}
	if typed.table == "beds" {
		t.leaveShape()
		fitOutline(t.row, t.cells)
		if wrong := t.leftOrBelow(h); wrong != nil {
			return nil, fault.List{wrong}
		}
	}
	return v.office.Save(v.author(), typed.table, typed.id, t.cells, typed.base)
}

// leaveShape leaves the cell of a rectangle blank that was so: the form shows what
// it stands for, and sends that.
func (t *drawnTurn) leaveShape() {
	if t.cells["shape"] == string(place.Rectangle) && t.row["shape"] == "" {
		delete(t.cells, "shape")
	}
}

// leftOrBelow tells of a bed whose middle lies off the plan to the left or below,
// where the files have no numbers for it.
func (t *drawnTurn) leftOrBelow(h *holding.Holding) *fault.Error {
	for _, column := range []string{"x_m", "y_m"} {
		if at, ok := t.number(column); !ok || at >= 0 {
			continue
		}
		for _, s := range h.Sites {
			if s.ID == t.row["site"] && s.PlanWidthM > 0 {
				return fault.New(fault.OutOfRange, "exchange.bed_outside", words.Args{"bed": t.row["name"], "site": s.Name,
					"width": s.PlanWidthM, "depth": s.PlanDepthM}).In(fault.Place{File: "beds.csv", Column: column})
			}
		}
	}
	return nil
}

// bothSides tells of a plan that has been given a width or a depth alone.
func (t *drawnTurn) bothSides() *fault.Error {
	for _, column := range []string{"plan_width_m", "plan_depth_m"} {
		if at, ok := t.number(column); ok && at == 0 {
			return fault.New(fault.Invalid, "web.draw_both_sides", nil).In(fault.Place{File: "sites.csv", Column: column})
		}
	}
	return nil
}
