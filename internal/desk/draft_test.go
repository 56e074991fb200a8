package desk

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
)

// corner is two beds of the demo, and what is wanted most.
func corner(t *testing.T) *holding.Holding {
	t.Helper()
	h := *sampleHolding(t)
	h.Beds, h.Wants, h.Batches, h.Records, h.Changes = h.Beds[:2], h.Wants[:4], nil, nil, nil
	own := h.Plantings[:0:0]
	for _, p := range h.Plantings {
		if (p.Bed == h.Beds[0].ID || p.Bed == h.Beds[1].ID) && p.Relation == "" && p.To == "" {
			own = append(own, p)
		}
	}
	covers := h.Covers[:0:0]
	for _, c := range h.Covers {
		if c.Bed == h.Beds[0].ID || c.Bed == h.Beds[1].ID {
			covers = append(covers, c)
		}
	}
	h.Plantings, h.Covers = own, covers
	return &h
}

// The same seed and steps draft the same year, whose cost lies between the bound and
// that of sowing nothing.
func TestDraftIsRepeatable(t *testing.T) {
	h := corner(t)
	a, err := DraftYear(h, DraftOptions{Seed: 1, Steps: 500})
	if err != nil {
		t.Fatal(err)
	}
	b, err := DraftYear(h, DraftOptions{Seed: 1, Steps: 500})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a, b) {
		t.Error("two drafts of one seed differ")
	}
	if !(a.Bound <= a.Objective+1e-6 && a.Objective < a.Unsown) || math.IsNaN(a.ShareThen) || len(a.Rows) == 0 {
		t.Errorf("bound %v, objective %v, unsown %v, %d rows", a.Bound, a.Objective, a.Unsown, len(a.Rows))
	}
	if g := a.Gathered; g == nil || g.Rows != len(a.Rows) || g.Objective != a.Objective || g.Rows > g.RowsBefore {
		t.Errorf("%d rows at %v, gathered as %+v", len(a.Rows), a.Objective, g)
	}
}

// Pins stay, what is forbidden does not come, and what is named wrongly is told.
func TestDraftKeepsItsWishes(t *testing.T) {
	h := corner(t)
	pinned := ""
	for _, p := range h.Plantings {
		if p.Date > h.Today {
			pinned = p.ID
			break
		}
	}
	hours := 5.0
	o := DraftOptions{Seed: 1, Steps: 50, Pins: []string{pinned}, Forbids: []DraftCrop{{"carrots", "home 1"}, {"potato", ""}}, Hours: &hours}
	v, err := DraftYear(h, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range v.Rows {
		if d, _ := cal.Parse(r.Cells["date"]); r.Cells["crop"] == "potato" || r.Cells["crop"] == "carrot" && r.Cells["bed"] == h.Beds[0].ID || d < h.Today {
			t.Errorf("drafted %v", r.Cells)
		}
	}
	for _, bad := range []DraftOptions{{Pins: []string{"no-such"}}, {Forbids: []DraftCrop{{"moonflower", ""}}}, {Forbids: []DraftCrop{{"carrot", "nowhere"}}}} {
		if _, err := DraftYear(h, bad); err == nil {
			t.Errorf("%+v was taken", bad)
		}
	}
}
