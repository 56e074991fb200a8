package desk_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
)

// officeOn is the demo household on another day, with nothing recorded since.
func officeOn(t *testing.T, today cal.Date) *desk.Office {
	t.Helper()
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	h.Today = today
	o := empty(t)
	if err := o.Begin(by("begin"), h); err != nil {
		t.Fatal(err)
	}
	return o
}

// Busy days of the demo's year.
var may, july = cal.Of(2027, 5, 5), cal.Of(2027, 7, 5)

func weekOf(t *testing.T, o *desk.Office) *desk.WeekView {
	t.Helper()
	w, err := o.WeekView(desk.JobsOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// startsAsked are the sowings and plantings that are asked after.
func startsAsked(w *desk.WeekView) (ids []string, due map[string]cal.Date) {
	due = map[string]cal.Date{}
	for _, p := range w.Past {
		for _, j := range p.Jobs {
			if p.Work == "starts" {
				ids = append(ids, j.ID)
				due[j.Planting+"/"+string(j.Kind)] = j.Best
			}
		}
	}
	return ids, due
}

// All that is asked after is answered at once: it is booked on its days in one entry,
// asked no more, and taken back at once.
func TestWhatIsAskedAfterIsAnsweredAtOnce(t *testing.T) {
	o := officeOn(t, may)
	ids, due := startsAsked(weekOf(t, o))
	if len(ids) < 10 {
		t.Fatalf("%d sowings and plantings are asked after", len(ids))
	}
	before := standing(t, o)
	e, err := o.AnswerJobs(by("all"), desk.JobsAnswer{Jobs: ids, Did: record.Done, OnDay: true})
	if err != nil {
		t.Fatal(err)
	}
	got := recordsOf(t, o, before)
	if len(got) != len(ids) {
		t.Errorf("%d records of %d jobs", len(got), len(ids))
	}
	for _, r := range got {
		if r.Date != due[r.Planting+"/sow"] && r.Date != due[r.Planting+"/set"] && r.Date != due[r.Planting+"/plant-out"] && r.Date != due[r.Planting+"/sow-indoors"] {
			t.Errorf("%s %s on %s", r.Planting, r.What, r.Date)
		}
	}
	if left, _ := startsAsked(weekOf(t, o)); len(left) > 0 {
		t.Errorf("still asked: %v", left)
	}
	if _, err := o.Undo(by("back"), e.ID); err != nil {
		t.Fatal(err)
	}
	if again, _ := startsAsked(weekOf(t, o)); len(again) != len(ids) || len(recordsOf(t, o, before)) != 0 {
		t.Errorf("%d asked after undoing", len(again))
	}
}

// What is still to do stands in the week's list again; what will not be done does not,
// nor is it asked.
func TestStillToDoComesBackIntoTheList(t *testing.T) {
	o := officeOn(t, may)
	ids, _ := startsAsked(weekOf(t, o))
	if _, err := o.AnswerJobs(by("todo"), desk.JobsAnswer{Jobs: ids[:2], Did: record.PutOff}); err != nil {
		t.Fatal(err)
	}
	if _, err := o.AnswerJobs(by("not"), desk.JobsAnswer{Jobs: ids[2:], Did: record.Skipped}); err != nil {
		t.Fatal(err)
	}
	w := weekOf(t, o)
	told := map[string]bool{}
	for _, l := range w.Lines() {
		told[l.ID] = true
	}
	if !told[ids[0]] || !told[ids[1]] || told[ids[2]] {
		t.Errorf("told: %v %v, %v", told[ids[0]], told[ids[1]], told[ids[2]])
	}
	if left, _ := startsAsked(w); len(left) > 0 {
		t.Errorf("still asked: %v", left)
	}
}

// A busy week stays a sheet that can be carried out: the lines of the demo's weeks of May
// and July, told singly before, with nothing ticked since January.
func TestABusyWeekStaysShort(t *testing.T) {
	for _, day := range []cal.Date{may, july} {
		w := weekOf(t, officeOn(t, day))
		asked := 0
		for _, p := range w.Past {
			asked += len(p.Jobs)
		}
		if w.Count > 40 || w.Count < 20 || asked < 8 || len(w.Past) > 4 {
			t.Errorf("in the week of %s %d lines, %d asked after in %d", day, w.Count, asked, len(w.Past))
		}
		t.Logf("%s: %d lines of %d jobs, %d asked after", day, w.Count, len(w.Lines()), asked)
	}
}
