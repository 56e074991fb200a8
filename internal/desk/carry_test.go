package desk_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
)

// Next year is written as one entry: a draft with a step for each sowing, and its
// covers; taking it back leaves everything as it was.
func TestNextYearIsKeptAndTakenBack(t *testing.T) {
	o := sampleOffice(t)
	before, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	view, err := o.CarryView(desk.CarryOptions{Leave: map[string]bool{"swe-27": true}})
	if err != nil || len(view.Sowings) == 0 {
		t.Fatal(view, err)
	}
	kept, draft, err := o.KeepCarried(desk.Author{Entry: "carry", At: "2027-01-04T09:00:00Z"}, desk.CarryOptions{Leave: map[string]bool{"swe-27": true}})
	if err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	got, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, draft.ID)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	found := map[string]plan.Planting{}
	for _, p := range got {
		found[p.ID] = p
	}
	for _, s := range view.Sowings {
		if p, ok := found[s.ID]; !ok || p != s.Planting {
			t.Errorf("%+v is written as %+v", s.Planting, p)
		}
		if s.From == "swe-27" {
			t.Error("what was left out is carried")
		}
	}
	if h.Plan == draft.ID || draft.Base != h.Plan {
		t.Errorf("%s is in force, the draft is %+v", h.Plan, draft)
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
}

// Once the draft is in force, next year has all that this year would carry.
func TestCarryingTwiceCarriesOnce(t *testing.T) {
	o := sampleOffice(t)
	_, draft, err := o.KeepCarried(desk.Author{Entry: "carry", At: "2027-01-04T09:00:00Z"}, desk.CarryOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.PutInForce(desk.Author{Entry: "force", At: "2027-01-04T09:10:00Z"}, draft.Name); err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil || h.Plan != draft.ID {
		t.Fatal(h.Plan, err)
	}
	again, err := o.CarryView(desk.CarryOptions{})
	if err != nil || len(again.Sowings) != 0 || len(again.Covers) != 0 {
		t.Errorf("%d sowings and %d covers are carried again: %v", len(again.Sowings), len(again.Covers), err)
	}
}

func TestWhatCannotBeCarriedIsTold(t *testing.T) {
	o := sampleOffice(t)
	for _, options := range []desk.CarryOptions{{Leave: map[string]bool{"nothing": true}}, {Into: map[string]string{"nothing": "h1"}}, {Into: map[string]string{"swe-27": "nowhere"}}} {
		if _, err := o.CarryView(options); err == nil {
			t.Errorf("%+v is taken", options)
		}
	}
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	own := *h
	own.Plan = ""
	if _, err := desk.CarryForward(&own, desk.CarryOptions{}); err == nil {
		t.Error("next year is made without a plan in force")
	}
	own.Plan, own.Plantings, own.Changes = "p2027", nil, nil
	v, err := desk.CarryForward(&own, desk.CarryOptions{})
	if err != nil || len(v.Sowings) != 0 || len(v.Wrong) != 0 {
		t.Errorf("an empty plan: %+v, %v", v, err)
	}
}

// A recorded day counts, and a told bed is taken.
func TestRecordsAndToldBedsCount(t *testing.T) {
	o := sampleOffice(t)
	if _, err := o.Save(desk.Author{Entry: "record", At: "2027-01-04T09:00:00Z"}, "holding", "larkmeer", map[string]string{"today": "2027-06-10"}, 1); err != nil {
		t.Fatal(err)
	}
	if _, err := o.Save(desk.Author{Entry: "sown", At: "2027-01-04T09:01:00Z"}, "records", "", map[string]string{"date": "2027-06-06", "what": "planted", "planting": "swc-27", "bed": "s2"}, 0); err != nil {
		t.Fatal(err)
	}
	v, err := o.CarryView(desk.CarryOptions{Into: map[string]string{"run-27": "h2"}})
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, s := range v.Sowings {
		switch s.From {
		case "swc-27":
			seen++
			if s.LaterD != 9 || s.Date != cal.Of(2028, 6, 4) {
				t.Errorf("%+v", s)
			}
		case "run-27":
			seen++
			if s.Bed != "h2" {
				t.Errorf("%+v", s)
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d of two were carried; planned already: %v", seen, v.Planned)
	}
}
