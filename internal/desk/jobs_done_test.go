package desk_test

import (
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/record"
)

// recordsOf are what was recorded since a holding was as it is.
func recordsOf(t *testing.T, o *desk.Office, before *holding.Holding) []record.Record {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	return h.Records[len(before.Records):]
}

func standing(t *testing.T, o *desk.Office) *holding.Holding {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// What is done and changes the facts of the plan is recorded in the same entry, and
// taken back with it.
func TestWhatIsDoneIsRecordedInTheSameEntry(t *testing.T) {
	o := demoOffice(t)
	v, err := o.JobsView(desk.JobsOptions{Days: 120})
	if err != nil {
		t.Fatal(err)
	}
	before := standing(t, o)
	tried := map[string]bool{}
	for _, l := range v.Lines() {
		if tried[string(l.Kind)] || l.Turn > 20000 {
			continue
		}
		tried[string(l.Kind)] = true
		want, records := map[string]record.What{"sow": record.Planted, "set": record.Planted, "plant-out": record.Planted, "sow-indoors": record.Raised,
			"prick-out": record.Pricked, "pick": record.Picked, "clear": record.Cleared, "cover": record.Covered, "uncover": record.Covered, "net": record.Covered,
			"feed": record.Fed, "compost": record.Composted, "mulch": record.Mulched, "lime": record.Limed, "water": record.Watered}[string(l.Kind)]
		e, err := o.AnswerJob(by("done "+l.ID), record.Answer{Job: l.ID, Did: record.Done, Until: cal.None})
		if err != nil {
			t.Fatalf("%s: %v", l.ID, err)
		}
		got := recordsOf(t, o, before)
		switch {
		case !records && len(got) > 0:
			t.Errorf("%s wrote %+v", l.ID, got)
		case records && (len(got) != 1 || got[0].What != want || got[0].Planting != l.Planting):
			t.Errorf("%s wrote %+v, want one %s", l.ID, got, want)
		case records && (got[0].Value > 0) != slices.Contains([]string{"pick", "feed", "compost", "mulch", "lime", "water"}, string(l.Kind)):
			t.Errorf("%s tells %g %s", l.ID, got[0].Value, got[0].Unit)
		}
		if text := said(e); !strings.Contains(text, "a job done on 4 January 2027") {
			t.Errorf("it is told as %q", text)
		}
		if _, err := o.Undo(by("undo "+l.ID), e.ID); err != nil {
			t.Fatal(err)
		}
		after := standing(t, o)
		if len(after.Records) != len(before.Records) || len(after.Answers) != len(before.Answers) || !slices.Equal(after.Covers, before.Covers) {
			t.Errorf("%s taken back leaves %d records and %d answers", l.ID, len(after.Records), len(after.Answers))
		}
	}
	for _, kind := range []string{"sow", "set", "plant-out", "sow-indoors", "pick", "clear", "cover", "compost"} {
		if !tried[kind] {
			t.Errorf("nothing to %s was tried", kind)
		}
	}
}

// A pick that was weighed is recorded as it was, its share for a store lies there, and
// the next turn comes after it.
func TestAPickIsRecordedAsItWasWeighed(t *testing.T) {
	o := demoOffice(t)
	before := standing(t, o)
	const pick = "pick:lee-26:8"
	if _, err := o.DoneJob(by("pick"), record.Answer{Job: pick, Did: record.Done, Until: cal.None}, desk.DoneAs{Kg: 1.25}); err != nil {
		t.Fatal(err)
	}
	got := recordsOf(t, o, before)
	if len(got) != 1 || got[0].Value != 1.25 || got[0].Unit != "kg" || got[0].Planting != "lee-26" {
		t.Fatalf("%+v", got)
	}
	v, err := o.JobsView(desk.JobsOptions{Days: 14})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range v.Lines() {
		if l.ID == pick {
			t.Error("picked, and still to be picked")
		}
		if l.ID == "pick:lee-26:9" && l.Best != before.Today+7 {
			t.Errorf("the next turn is on %s", l.Best)
		}
	}
}

// A store's count is recorded only with what was weighed: nobody else knows it.
func TestACountWithoutAWeightIsNone(t *testing.T) {
	o := demoOffice(t)
	v, err := o.JobsView(desk.JobsOptions{Days: 60})
	if err != nil {
		t.Fatal(err)
	}
	lines := v.Lines()
	at := slices.IndexFunc(lines, func(l desk.JobLine) bool { return l.Kind == "count" })
	if at < 0 {
		t.Fatal("nothing to count")
	}
	before := standing(t, o)
	for _, c := range []struct {
		as   desk.DoneAs
		want int
	}{{desk.DoneAs{}, 0}, {desk.DoneAs{Kg: 3}, 1}} {
		e, err := o.DoneJob(by(lines[at].ID+numberOf(c.want)), record.Answer{Job: lines[at].ID, Did: record.Done, Until: cal.None}, c.as)
		if err != nil {
			t.Fatal(err)
		}
		if got := recordsOf(t, o, before); len(got) != c.want {
			t.Errorf("%+v", got)
		}
		if _, err := o.Undo(by("undo"+numberOf(c.want)), e.ID); err != nil {
			t.Fatal(err)
		}
	}
}

func numberOf(n int) string { return string(rune('0' + n)) }

// A cover that went on on another day lies from that day on.
func TestACoverLiesFromTheDayItWentOn(t *testing.T) {
	o := demoOffice(t)
	const id = "cover:h4-fleece"
	if _, err := o.AnswerJob(by("on"), record.Answer{Job: id, Did: record.Done, Until: cal.None}); err != nil {
		t.Fatal(err)
	}
	h := standing(t, o)
	for _, c := range h.Covers {
		if c.ID == "h4-fleece" && c.On != h.Today {
			t.Errorf("it lies from %s on", c.On)
		}
	}
}
