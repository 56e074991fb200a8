package desk

import (
	"io"
	"strings"

	"garner/internal/calendar"
	"garner/internal/words"
)

// WriteCalendar writes jobs as an iCalendar file in the words of a catalogue. A job
// keeps its UID from one file to the next; one that is overdue stands on today.
func WriteCalendar(w io.Writer, v *JobsView, c *words.Catalogue) error {
	out := calendar.Calendar{Name: c.Text(words.P("desk.jobs_calendar", words.Args{"holding": v.Household})), Stamp: v.Today}
	for _, l := range v.Lines() {
		lines := []string{c.Text(l.Why), c.Text(words.Sharpened(l.When, v.Today)), c.Text(l.Takes)}
		for _, s := range l.Says {
			lines = append(lines, c.Text(s))
		}
		place := c.Text(l.Place)
		title := c.Text(words.P("desk.job_event", words.Args{"place": place, "title": l.Title}))
		out.Events = append(out.Events, calendar.Event{UID: l.ID + "@" + v.ID + ".garner", Day: l.Due(v.Today), Title: title,
			Text: strings.Join(lines, "\n"), Place: place})
	}
	return calendar.Write(w, &out)
}
