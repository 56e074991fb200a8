package web

import (
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// otherwise are the fields by which a job is told that was not done as it was proposed:
// the day, how much, and where it went.
func (w *weekWriter) otherwise(l *desk.JobLine) ([]fieldBody, error) {
	out := []fieldBody{{Name: "date", Label: w.say("web.week_on_day", nil), Kind: kindDate}}
	switch {
	case l.TellsKg():
		out = append(out, fieldBody{Name: "kg", Label: w.say("web.week_how_much", nil), Kind: kindNumber, Unit: w.say("web.tend_unit_kg", nil)})
	case l.TellsLitres():
		out = append(out, fieldBody{Name: "litres", Label: w.say("web.week_how_much", nil), Kind: kindNumber, Unit: w.say("web.unit_L", nil)})
	}
	if !l.TellsStore() {
		return out, nil
	}
	h, err := w.office.Holding()
	if err != nil || len(h.Stores) == 0 {
		return out, err
	}
	where := fieldBody{Name: "store", Label: w.say("web.week_where", nil), Kind: kindChoice, Options: []option{{"", w.say("web.week_where_"+string(l.Kind), nil)}}}
	for i := range h.Stores {
		where.Options = append(where.Options, option{h.Stores[i].ID, h.Stores[i].Name})
	}
	return append(out, where), nil
}

// doneAs reads what was done otherwise than proposed; what is blank is as proposed.
func doneAs(a *record.Answer, as *desk.DoneAs, typed map[string]string) fault.List {
	var faults fault.List
	if text := typed["date"]; text != "" {
		day, err := cal.Parse(text)
		if err != nil {
			faults = append(faults, fault.New(fault.Invalid, "web.tend_day_unreadable", words.Args{"given": text}).In(fault.Place{Column: "date"}))
		} else {
			a.Date = day
		}
	}
	for column, to := range map[string]*float64{"kg": &as.Kg, "litres": &as.Litres} {
		text := typed[column]
		if text == "" {
			continue
		}
		n, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(n > 0 && n <= mostNumber) {
			faults = append(faults, fault.New(fault.Invalid, "web.week_amount_wrong", words.Args{"given": text}).In(fault.Place{Column: column}))
			continue
		}
		*to = n
	}
	as.Store = typed["store"]
	return faults
}
