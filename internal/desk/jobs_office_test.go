package desk_test

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
)

// A job that was done is kept in one entry, is no longer told, and is told again when
// the entry is taken back.
func TestAJobIsDoneAndTakenBack(t *testing.T) {
	o := demoOffice(t)
	has := func(id string) bool {
		t.Helper()
		v, err := o.JobsView(desk.JobsOptions{Days: 14})
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range v.Lines() {
			if l.ID == id {
				return true
			}
		}
		return false
	}
	const id = "chit:pot-27t"
	if !has(id) {
		t.Fatalf("no %s", id)
	}
	e, err := o.AnswerJob(by("done"), record.Answer{Job: id, Did: record.Done, Until: cal.None, Minutes: 12})
	if err != nil {
		t.Fatal(err)
	}
	if has(id) || !strings.Contains(said(e), "a job done on 4 January 2027") {
		t.Errorf("it is still told, or was told as %q", said(e))
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil {
		t.Fatal(err)
	}
	if !has(id) {
		t.Error("taken back, it is gone")
	}
}

// What cannot be said of a job is refused.
func TestAnswersThatCannotBe(t *testing.T) {
	o := demoOffice(t)
	for _, a := range []record.Answer{
		{Job: "chit:pot-27t", Did: record.PutOff, Until: cal.None},
		{Job: "chit:pot-27t", Did: record.PutOff, Until: cal.Of(2026, 12, 1)},
		{Job: "chit:pot-27t", Did: "danced", Until: cal.None},
		{Job: "", Did: record.Done, Until: cal.None},
	} {
		if _, err := o.AnswerJob(by("x"), a); err == nil {
			t.Errorf("took %+v", a)
		}
	}
}

// BenchmarkJobsOfAWeek times the demo's week with its table at hand.
func BenchmarkJobsOfAWeek(b *testing.B) {
	o := demoOffice(b)
	if _, err := o.JobsView(desk.JobsOptions{}); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := o.JobsView(desk.JobsOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkWeekCold times the demo's week with nothing computed before: the table, the
// water of the beds and the jobs.
func BenchmarkWeekCold(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		o := demoOffice(b)
		b.StartTimer()
		if _, err := o.JobsView(desk.JobsOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}
