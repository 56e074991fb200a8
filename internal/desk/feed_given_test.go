package desk_test

import (
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/jobs"
	"garner/internal/record"
)

// dueFeeds are the plantings that are due to be fed, with all of the view.
func dueFeeds(t *testing.T, o *desk.Office) (ids []string, v *desk.FeedView) {
	t.Helper()
	v, err := o.FeedView()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range v.Turns {
		if f.Due <= v.Today {
			ids = append(ids, f.Planting)
		}
	}
	return ids, v
}

// All that is due is told as fed in one entry, each with its litres; what somebody has
// fed meanwhile is not fed twice; and one step takes all of it back.
func TestAllAreFedInOneEntry(t *testing.T) {
	o := officeOn(t, cal.Of(2027, 8, 2))
	ids, v := dueFeeds(t, o)
	if len(ids) < 3 {
		t.Fatalf("%d plantings are due", len(ids))
	}
	before := standing(t, o)
	if _, err := o.Feed(by("one"), desk.FeedGiven{Plantings: ids[:1]}); err != nil {
		t.Fatal(err)
	}
	e, err := o.Feed(by("all"), desk.FeedGiven{Plantings: ids})
	if err != nil {
		t.Fatal(err)
	}
	litres := map[string]float64{}
	for _, f := range v.Turns {
		litres[f.Planting] = f.Litres
	}
	got := recordsOf(t, o, before)
	if len(got) != len(ids) || len(e.Changes) != len(ids)-1 {
		t.Errorf("%d records of %d plantings, %d changes", len(got), len(ids), len(e.Changes))
	}
	for _, r := range got {
		if r.What != record.Fed || r.Date != v.Today || r.Unit != "L" || r.Value != litres[r.Planting] {
			t.Errorf("%+v", r)
		}
	}
	if left, _ := dueFeeds(t, o); len(left) != 0 {
		t.Errorf("%v are due still", left)
	}
	if _, err := o.Feed(by("again"), desk.FeedGiven{Plantings: ids}); err == nil {
		t.Error("what is not due is fed")
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil {
		t.Fatal(err)
	}
	if left, _ := dueFeeds(t, o); len(left) != len(ids)-1 {
		t.Errorf("taken back, %v are due", left)
	}
}

// Dry feed is recorded by weight, lasts longer, and is refused where no label is told.
func TestDryFeedIsRecordedByWeight(t *testing.T) {
	o := officeOn(t, cal.Of(2027, 8, 2))
	ids, v := dueFeeds(t, o)
	dry := desk.FeedGiven{Plantings: ids, Dry: true}
	if _, err := o.Feed(by("untold"), dry); err == nil {
		t.Error("dry feed without a dose was taken")
	}
	row, err := o.Row("holding", v.Holding)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.Save(by("label"), "holding", v.Holding, map[string]string{"feed_g_m2": "70"}, row.Version); err != nil {
		t.Fatal(err)
	}
	before := standing(t, o)
	if _, err := o.Feed(by("dry"), dry); err != nil {
		t.Fatal(err)
	}
	_, v = dueFeeds(t, o)
	byID := map[string]desk.FeedRow{}
	for _, f := range v.Turns {
		byID[f.Planting] = f
	}
	for _, r := range recordsOf(t, o, before) {
		f := byID[r.Planting]
		if r.Unit != record.KgUnit || r.Value != f.DryG/1000 || !f.LastDry || f.Due != v.Today+cal.Date(f.DryEvery) {
			t.Errorf("%+v, then %+v", r, f)
		}
	}
}

// weekFeeds are the feeds of the week's list, in rounds and alone.
func weekFeeds(t *testing.T, o *desk.Office) (ids []string, found []desk.JobLine) {
	t.Helper()
	var take func([]desk.JobLine)
	take = func(lines []desk.JobLine) {
		for _, l := range lines {
			if l.Kind == jobs.Feed && len(l.Parts) == 0 {
				ids, found = append(ids, l.ID), append(found, l)
			}
			take(l.Parts)
		}
	}
	for _, share := range weekOf(t, o).Shares {
		for _, stop := range share.Legs {
			take(stop.Jobs)
		}
	}
	return ids, found
}

// The feeds of the week are answered at once, and the page of feed knows of it; what is
// told there is no job of the week any more.
func TestFeedIsToldInOnePlace(t *testing.T) {
	o := officeOn(t, cal.Of(2027, 8, 2))
	ids, _ := weekFeeds(t, o)
	due, _ := dueFeeds(t, o)
	if len(ids) < 2 || len(due) < 2 {
		t.Fatalf("%d feeds in the week, %d due", len(ids), len(due))
	}
	before := standing(t, o)
	e, err := o.AnswerJobs(by("week"), desk.JobsAnswer{Jobs: ids, Did: record.Done})
	if err != nil {
		t.Fatal(err)
	}
	fed := recordsOf(t, o, before)
	if len(fed) != len(ids) || fed[0].What != record.Fed || fed[0].Value <= 0 {
		t.Errorf("%d records of %d jobs: %+v", len(fed), len(ids), fed)
	}
	left, _ := dueFeeds(t, o)
	for _, id := range left {
		for _, r := range fed {
			if r.Planting == id {
				t.Errorf("%s is due still", id)
			}
		}
	}
	if _, err := o.Undo(by("undo"), e.ID); err != nil {
		t.Fatal(err)
	}
	if again, _ := weekFeeds(t, o); len(again) != len(ids) {
		t.Errorf("%v before, taken back %v", ids, again)
	}
	if _, err := o.Feed(by("all"), desk.FeedGiven{Plantings: due}); err != nil {
		t.Fatal(err)
	}
	_, found := weekFeeds(t, o)
	for _, j := range found {
		if slices.Contains(due, j.Planting) && j.Best < cal.Of(2027, 8, 9) {
			t.Errorf("%s was fed today and is asked for on %v", j.Planting, j.Best)
		}
	}
}
