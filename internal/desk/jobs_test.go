package desk

import (
	"bytes"
	"testing"
	"time"

	"github.com/emersion/go-ical"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/jobs"
	"garner/internal/words"
)

// jobYears are enough futures for the jobs of a test.
const jobYears = 10

func jobsOf(t *testing.T, o JobsOptions) *JobsView {
	t.Helper()
	o.Years = jobYears
	v, err := Jobs(demotest.Holding(t, ""), o)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Cut to the hours, what is kept fits, what was left out is told, and together they
// are all there is.
func TestJobsAreCutToTheHours(t *testing.T) {
	all, cut := jobsOf(t, JobsOptions{Days: 28, Costs: true}), jobsOf(t, JobsOptions{Days: 28, Hours: 1})
	if cut.Minutes > 60 || len(cut.Dropped) == 0 || len(cut.Lines())+len(cut.Dropped) != len(all.Lines()) {
		t.Errorf("%g minutes, %d and %d of %d jobs", cut.Minutes, len(cut.Lines()), len(cut.Dropped), len(all.Lines()))
	}
	weighed := 0
	for _, l := range all.Lines() {
		if l.Weighed {
			weighed++
		}
	}
	if weighed == 0 {
		t.Error("nothing was weighed")
	}
}

// Two people share all of it, in the order of the way.
func TestJobsAreShared(t *testing.T) {
	one, two := jobsOf(t, JobsOptions{Days: 70}), jobsOf(t, JobsOptions{Days: 70, People: 2})
	a, b := one.Lines(), two.Lines()
	if len(two.Shares) != 2 || len(a) != len(b) || one.Minutes != two.Minutes {
		t.Fatalf("%d shares, %d of %d jobs", len(two.Shares), len(b), len(a))
	}
	longest := 0.0
	for _, l := range a {
		longest = max(longest, l.Minutes)
	}
	if d := two.Shares[0].Minutes - two.Shares[1].Minutes; d > longest || -d > longest {
		t.Errorf("%g and %g minutes", two.Shares[0].Minutes, two.Shares[1].Minutes)
	}
}

// A child is given nothing that a child cannot do.
func TestJobsForAChild(t *testing.T) {
	v := jobsOf(t, JobsOptions{Days: 70, Who: "child"})
	if len(v.Lines()) == 0 {
		t.Error("nothing for a child")
	}
	for _, l := range v.Lines() {
		if l.Who != jobs.Child {
			t.Errorf("a child is to %s", l.ID)
		}
	}
}

// The calendar has an event for every turn, on its day, with an id of its own, as an
// independent parser reads it.
func TestTheCalendarHasEveryJob(t *testing.T) {
	v := jobsOf(t, JobsOptions{Days: 120})
	var out bytes.Buffer
	if err := WriteCalendar(&out, v, words.English()); err != nil {
		t.Fatal(err)
	}
	c, err := ical.NewDecoder(&out).Decode()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]cal.Date{}
	for _, l := range v.Lines() {
		want[l.ID+"@larkmeer.garner"] = l.Due(v.Today)
	}
	events := c.Events()
	if len(events) != len(want) || len(want) == 0 {
		t.Fatalf("%d events of %d jobs", len(events), len(want))
	}
	for i := range events {
		id, _ := events[i].Props.Text(ical.PropUID)
		on, err := events[i].DateTimeStart(time.UTC)
		if err != nil || want[id].String() != on.Format("2006-01-02") {
			t.Errorf("%s stands on %v, want %s: %v", id, on, want[id], err)
		}
		delete(want, id)
	}
}
