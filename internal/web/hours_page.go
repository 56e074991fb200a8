package web

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// hoursBody is the form on which hours of weather are pasted.
type hoursBody struct {
	Hidden  []hiddenField
	Sources []option
	Source  string
	Text    string
	Wrong   int
	Faults  []words.Phrase // the first of them
	More    int
	Rows    bool // some rows are wrong, and the good ones can be kept
}

// mostHourFaults is how many faults of pasted hours are told one by one.
const mostHourFaults = 12

func hoursPage(v *visit) error { return v.showHours(v.query("source"), "", nil) }

// hoursPosted keeps the hours, or shows them again with what is wrong.
func hoursPosted(v *visit) error {
	source, text := v.field("source"), v.field("hours")
	kept, err := v.office.AddHours(v.author(), source, text, v.field("good") == "yes")
	if err == nil {
		v.kept(kept, "/risk")
		return nil
	}
	if faults := listOf(err); faults != nil {
		return v.showHours(source, text, faults)
	}
	return err
}

func (v *visit) showHours(source, text string, faults fault.List) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := &hoursBody{Source: source, Text: text, Wrong: len(faults)}
	for i := range h.Weather {
		b.Sources = append(b.Sources, option{h.Weather[i].ID, h.Weather[i].Name})
	}
	for _, e := range faults {
		b.Rows = b.Rows || e.At.Row > 1
		if len(b.Faults) == mostHourFaults {
			b.More++
			continue
		}
		b.Faults = append(b.Faults, v.hourFault(e))
	}
	if b.Hidden, err = v.entryOf(); err != nil {
		return err
	}
	return v.show(page{Name: "hours", Nav: "weather", Status: statusOf(faults), Body: b})
}

// hourFault tells a fault with its row and column.
func (v *visit) hourFault(e *fault.Error) words.Phrase {
	if e.At.Row == 0 {
		return e.Phrase
	}
	return words.P("web.hours_at", words.Args{"row": e.At.Row, "column": e.At.Column, "says": e.Phrase})
}
