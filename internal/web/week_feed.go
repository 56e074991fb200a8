package web

import (
	"bytes"
	"net/http"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
)

// feedDays is how far ahead a calendar is told of jobs [d], as at the prompt.
const feedDays = 70

// weekFeed answers with the jobs as a calendar that is subscribed to.
func weekFeed(v *visit) error {
	ask := v.weekAsked(v.query)
	if ask.Wrong > 0 {
		for _, f := range ask.Fields {
			for _, p := range f.Faults {
				return &fault.Error{Kind: fault.OutOfRange, Phrase: p}
			}
		}
	}
	if strings.TrimSpace(v.query("days")) == "" {
		ask.options.Days = feedDays
	}
	view, err := v.office.WeekView(ask.options)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := desk.WriteCalendar(&b, view.JobsView, v.words.Spaced(" ")); err != nil {
		return err
	}
	send(v.w, v.r, http.StatusOK, "text/calendar; charset=utf-8", b.Bytes())
	return nil
}
