package desk_test

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
	"garner/internal/words"
)

// What is done in half an hour fits into it, and is told where there is more.
func TestHalfAnHourIsPickedOut(t *testing.T) {
	o := demoOffice(t)
	w, err := o.WeekView(desk.JobsOptions{Days: 28})
	if err != nil {
		t.Fatal(err)
	}
	minutes := 0.0
	for _, l := range w.Lines() {
		if w.First[l.ID] {
			minutes += l.Minutes
		}
	}
	if len(w.First) == 0 || minutes > 30 || minutes < 15 {
		t.Errorf("%d jobs of %g minutes", len(w.First), minutes)
	}
	lead := ""
	for _, p := range w.Lead {
		lead += words.English().Text(words.Sharpened(p, w.Today)) + " "
	}
	if !strings.Contains(lead, "half an hour") {
		t.Errorf("it leads with %q", lead)
	}
}

// What was answered today is told by its title with the entry that takes it back.
func TestAnsweredTodayHasItsTitle(t *testing.T) {
	o := demoOffice(t)
	const id = "chit:pot-27t"
	e, err := o.AnswerJob(by("skip"), record.Answer{Job: id, Did: record.Skipped, Until: cal.None})
	if err != nil {
		t.Fatal(err)
	}
	w, err := o.WeekView(desk.JobsOptions{Days: 14})
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Answered) != 1 {
		t.Fatalf("%d are answered", len(w.Answered))
	}
	a := w.Answered[0]
	if title := words.English().Text(a.Title); a.Job != id || a.Entry != e.ID || a.Did != record.Skipped || !strings.Contains(title, "seed potato") {
		t.Errorf("%+v, told as %q", a, title)
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil {
		t.Fatal(err)
	}
	if w, err = o.WeekView(desk.JobsOptions{Days: 14}); err != nil || len(w.Answered) != 0 {
		t.Errorf("taken back: %v, %+v", err, w.Answered)
	}
}

// The cost of putting one job off by a week is what the list of costs tells of it; a day
// that is no delay is told.
func TestPuttingOneOffCostsWhatTheListTells(t *testing.T) {
	o := demoOffice(t)
	all, err := o.WeekView(desk.JobsOptions{Days: 120, Costs: true})
	if err != nil {
		t.Fatal(err)
	}
	var dear *desk.JobLine
	for _, l := range all.Lines() {
		if l.Weighed && l.CostKg > 0.2 && l.Best > all.Today {
			dear = &l
			break
		}
	}
	if dear == nil {
		t.Fatal("nothing costs anything")
	}
	plain := desk.JobsOptions{Days: 120}
	c, err := o.PutOffCost(plain, dear.ID, dear.Best+7)
	if err != nil || c == nil {
		t.Fatal(err, c)
	}
	if got := c.Says.Args["kg"].(float64); c.Says.Key != "desk.put_off_costs" || got < 0.99*dear.CostKg || got > 1.01*dear.CostKg {
		t.Errorf("%s of %g kg, the list tells %g", c.Says.Key, got, dear.CostKg)
	}
	if c, err = o.PutOffCost(plain, dear.ID, dear.Best); err != nil || c.Says.Key != "desk.put_off_days" {
		t.Errorf("no delay: %v, %+v", err, c)
	}
	if c, err = o.PutOffCost(plain, "no:such:job", dear.Best+7); err != nil || c != nil {
		t.Errorf("a job that is not there: %v, %+v", err, c)
	}
}

// The sowing list has every sowing of a year's jobs once, and no other.
func TestSowingsAreThoseOfTheJobs(t *testing.T) {
	o := demoOffice(t)
	s, err := o.SowingsView()
	if err != nil {
		t.Fatal(err)
	}
	w, err := o.WeekView(desk.JobsOptions{Days: 365})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{}
	for _, l := range w.Lines() {
		switch l.Kind {
		case "sow", "sow-indoors", "set", "sow-green":
			want[l.Planting] = l.Amount.SeedG
		}
	}
	for _, l := range s.Sowings {
		g, ok := want[l.Planting]
		if !ok || l.SeedG < g {
			t.Errorf("%s is not among the jobs, or takes %g g in place of %g", l.Planting, l.SeedG, g)
		}
		delete(want, l.Planting)
	}
	if len(want) > 0 || len(s.Sowings) == 0 {
		t.Errorf("%d sowings, and lacking %v", len(s.Sowings), want)
	}
}
