package desk_test

import (
	"testing"
	"time"

	"garner/internal/desk"
	"garner/internal/plan"
)

// drafted waits for the draft behind the pages.
func drafted(t *testing.T, o *desk.Office, asked desk.DraftOptions) *desk.Drafting {
	t.Helper()
	if err := o.StartDraft(asked); err != nil {
		t.Fatal(err)
	}
	for {
		if d := o.Drafting(); d.Done {
			if d.Err != nil {
				t.Fatal(d.Err)
			}
			return d
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// between is a planting still to come that stands under or between another still to
// come.
func between(t *testing.T, o *desk.Office) string {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	all, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	for _, p := range all {
		for _, q := range all {
			if p.To == q.ID && (p.Relation == plan.Under || p.Relation == plan.Between) && p.Date > h.Today && q.Date > h.Today {
				return p.ID
			}
		}
	}
	t.Fatal("nothing stands under or between another")
	return ""
}

// A year drafted behind the pages is kept as a draft in one entry, which comes to the
// same plantings; taking it back leaves everything as it was.
func TestADraftedYearIsKeptAndTakenBack(t *testing.T) {
	o := sampleOffice(t)
	if _, _, err := o.KeepDraft(desk.Author{Entry: "none"}, "Drafted"); err == nil || o.Drafting() != nil {
		t.Error("a draft was kept before there was one")
	}
	before, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	pinned := between(t, o)
	d := drafted(t, o, desk.DraftOptions{Seed: 1, Steps: 300, Pins: []string{pinned}})
	if !(d.View.Bound <= d.View.Objective) || d.Best.Objective < d.View.Objective-1e-6 || len(d.View.Rows) == 0 {
		t.Errorf("%+v", d)
	}
	by := desk.Author{Entry: "keep", At: "2027-01-04T09:00:00Z"}
	kept, made, err := o.KeepDraft(by, "Drafted")
	if err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	got, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, made.ID)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	found := map[string]bool{}
	for _, p := range got {
		if p.ID == pinned && (p.Relation != plan.Alone || p.To != "") {
			t.Errorf("what it stood under is gone, and it is %+v", p)
		}
		found[p.Crop+p.Bed+p.Date.String()] = true
	}
	for _, r := range d.View.Rows {
		if !found[r.Cells["crop"]+r.Cells["bed"]+r.Cells["date"]] {
			t.Errorf("%v is not in the draft", r.Cells)
		}
	}
	if len(got) != len(d.View.Rows)+d.View.Kept || made.Base != h.Plan || o.Drafting().Kept != made.ID {
		t.Errorf("%d plantings of %d and %d, over %s", len(got), len(d.View.Rows), d.View.Kept, made.Base)
	}
	then, err := o.CompareView(h.Plan, made.ID)
	if err != nil {
		t.Fatal(err)
	}
	share := func(eaten, want []float64) float64 {
		sum, of := 0.0, 0.0
		for k := range eaten {
			sum, of = sum+eaten[k], of+want[k]
		}
		return sum / of
	}
	if a, b := share(then.Comparison.A.Eaten, then.Comparison.A.Want), share(then.Comparison.B.Eaten, then.Comparison.B.Want); b <= a {
		t.Errorf("the draft feeds %.3f of the table, the plan %.3f", b, a)
	}
	if _, err := o.Undo(desk.Author{Entry: "back", At: "2027-01-04T10:00:00Z"}, kept.ID); err != nil {
		t.Fatal(err)
	}
	after, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range before {
		if string(after[name]) != string(text) {
			t.Errorf("%s is not as it was", name)
		}
	}
	if o.Drafting().Kept != "" {
		t.Error("what was taken back is still told as kept")
	}
}

// A search that is stopped gives the best so far; a plan that has changed meanwhile is
// not drafted over.
func TestADraftIsStoppedAndRefusedOverAnotherPlan(t *testing.T) {
	o := sampleOffice(t)
	if err := o.StartDraft(desk.DraftOptions{Seed: 1, Seconds: 3600}); err != nil {
		t.Fatal(err)
	}
	o.StopDraft()
	if d := drafted(t, o, desk.DraftOptions{Seed: 2, Steps: 1}); d.Asked.Seed != 1 || !d.Stopped || len(d.View.Rows) == 0 {
		t.Errorf("stopped, it is %+v", d)
	}
	if _, err := o.PutInForce(desk.Author{Entry: "other", At: "2027-01-04T09:00:00Z"}, "fewer"); err != nil {
		t.Fatal(err)
	}
	if _, _, err := o.KeepDraft(desk.Author{Entry: "keep", At: "2027-01-04T10:00:00Z"}, "Drafted"); err == nil {
		t.Error("it was kept over another plan")
	}
}
