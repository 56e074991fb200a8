package web

import (
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// tendRoutes names what a bed's small forms are sent to, and the pages of covers
// owned and of seed and plants on hand.
func (s *Server) tendRoutes(mux *router) {
	mux.Handle("POST /beds/{id}/soil", s.atHome(soilPosted))
	mux.Handle("POST /beds/{id}/disease", s.atHome(diseasePosted))
	mux.Handle("POST /beds/{id}/rotation", s.atHome(rotationPosted))
	mux.Handle("POST /covers/{id}/off", s.atHome(coverOffPosted))
	mux.Handle("GET /gear", s.atHome(gearPage))
	mux.Handle("GET /onhand", s.atHome(onHandPage))
	s.mountRows(mux, &gearForm)
	s.mountRows(mux, &lotForm)
}

func number(version int64) string { return strconv.FormatInt(version, 10) }

// soilKinds are the records the soil's form makes.
var soilKinds = []string{"composted", "manured", "limed", "mulched"}

// soilPosted records what a bed's soil was given. An amount that is left blank
// is not told.
func soilPosted(v *visit) error {
	values := v.sent("soil", "date", "value", "unit")
	what := v.field("what")
	if !slices.Contains(soilKinds, what) {
		return formUnreadable()
	}
	cells := map[string]string{"what": what, "bed": v.r.PathValue("id"), "date": values["date"], "value": values["value"]}
	if values["value"] != "" {
		cells["unit"] = values["unit"]
	}
	return v.record("soil", cells, values)
}

// diseasePosted records a disease that stays in the ground.
func diseasePosted(v *visit) error {
	values := v.sent("disease", "problem", "date", "note")
	if values["problem"] == "" {
		missing := fault.New(fault.Invalid, "web.tend_problem_missing", nil).In(fault.Place{Column: "problem"})
		return v.again(v.r.PathValue("id"), typedForm{"disease", values, fault.List{missing}})
	}
	return v.record("disease", map[string]string{"what": "disease", "bed": v.r.PathValue("id"), "problem": values["problem"],
		"date": values["date"], "note": values["note"]}, values)
}

// record writes a record from a form of a bed's page, or shows the page again
// with what is wrong.
func (v *visit) record(form string, cells, typed map[string]string) error {
	bed := v.r.PathValue("id")
	kept, err := v.office.Save(v.author(), "records", "", cells, 0)
	if err == nil {
		v.kept(kept, bedPath(bed))
		return nil
	}
	if faults := listOf(err); faults != nil {
		return v.again(bed, typedForm{form, typed, faults})
	}
	return err
}

// rotationPosted silences a bed's rotation, or has it told again.
func rotationPosted(v *visit) error {
	base, err := v.base()
	if err != nil {
		return err
	}
	bed := v.r.PathValue("id")
	kept, err := v.office.Save(v.author(), "beds", bed, map[string]string{"rotation": v.field("rotation")}, base)
	if err != nil {
		return err
	}
	v.kept(kept, bedPath(bed))
	return nil
}

// coverOffPosted takes a cover off for a while or for good.
func coverOffPosted(v *visit) error {
	id := v.r.PathValue("id")
	base, err := v.base()
	if err != nil {
		return err
	}
	row, err := v.office.Row("covers", id)
	if err != nil {
		return err
	}
	bed, form := row.Cells["bed"], "off-"+id
	typed := v.sent(form, "off", "on")
	off, on, faults := days(typed)
	if len(faults) > 0 {
		return v.again(bed, typedForm{form, typed, faults})
	}
	kept, err := v.office.TakeOff(v.author(), id, off, on, base)
	if faults := listOf(err); faults != nil {
		return v.again(bed, typedForm{form, typed, faults})
	}
	if err != nil {
		return err
	}
	v.kept(kept, bedPath(bed))
	return nil
}

// days reads the two days of taking a cover off; blank is none.
func days(typed map[string]string) (off, on cal.Date, faults fault.List) {
	var read [2]cal.Date
	for i, column := range []string{"off", "on"} {
		read[i] = cal.None
		if typed[column] == "" {
			continue
		}
		day, err := cal.Parse(typed[column])
		if err != nil {
			faults = append(faults, fault.New(fault.Invalid, "web.tend_day_unreadable", words.Args{"given": typed[column]}).In(fault.Place{Column: column}))
			continue
		}
		read[i] = day
	}
	return read[0], read[1], faults
}
