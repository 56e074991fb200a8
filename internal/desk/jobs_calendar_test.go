package desk_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
	"garner/internal/words"
)

// daysOf are the days of a calendar's events by their ids, as a parser that is not ours
// reads them.
func daysOf(t *testing.T, o *desk.Office) map[string]string {
	t.Helper()
	v, err := o.JobsView(desk.JobsOptions{Days: 120})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := desk.WriteCalendar(&out, v, words.English()); err != nil {
		t.Fatal(err)
	}
	c, err := ical.NewDecoder(&out).Decode()
	if err != nil {
		t.Fatal(err)
	}
	days := map[string]string{}
	for _, e := range c.Events() {
		id, err := e.Props.Text(ical.PropUID)
		if err != nil {
			t.Fatal(err)
		}
		on, err := e.DateTimeStart(time.UTC)
		if err != nil || days[id] != "" {
			t.Fatalf("%s stands on %s and %v: %v", id, days[id], on, err)
		}
		days[id] = on.Format(time.DateOnly)
	}
	return days
}

// Whatever is edited, a job keeps its id: what is moved moves on the phone, what is new
// comes beside it, and nothing goes or stands there twice.
func TestACalendarsIDsStayOverEdits(t *testing.T) {
	o := demoOffice(t)
	now := daysOf(t, o)
	edit := func(what string, write func()) (before map[string]string) {
		t.Helper()
		before = now
		write()
		now = daysOf(t, o)
		for id, day := range before {
			mine := strings.Contains(id, ":pot-27t") || strings.Contains(id, ":fbe-27t") // the beans follow the potatoes
			if now[id] == "" || now[id] != day && !mine {
				t.Errorf("%s: %s stood on %s and stands on %q", what, id, day, now[id])
			}
		}
		return before
	}
	edit("a name", func() { save(t, o, "name", "beds", "h1", map[string]string{"name": "Walnut bed"}) })
	before := edit("a job more", func() {
		save(t, o, "own", "own_jobs", "", map[string]string{"name": "Sharpen the spade", "date": "2027-02-02", "minutes": "15"})
	})
	if len(now) != len(before)+1 {
		t.Errorf("with one job more there are %d events after %d", len(now), len(before))
	}
	const set, chit = "set:pot-27t@larkmeer.garner", "chit:pot-27t@larkmeer.garner"
	before = edit("a week later", func() { save(t, o, "later", "plantings", "pot-27t", map[string]string{"date": "2027-03-01"}) })
	if before[set] != "2027-02-22" || now[set] != "2027-03-01" {
		t.Errorf("planted a week later it went from %s to %s", before[set], now[set])
	}
	edit("put off", func() {
		if _, err := o.AnswerJob(by("off"), record.Answer{Job: "chit:pot-27t", Did: record.PutOff, Until: cal.Of(2027, 1, 20)}); err != nil {
			t.Fatal(err)
		}
	})
	if now[chit] != "2027-01-20" {
		t.Errorf("put off to 20 January it stands on %q", now[chit])
	}
}
