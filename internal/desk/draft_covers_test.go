package desk_test

import (
	"slices"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/place"
	"garner/internal/words"
)

// The covers of a drafted year are told, and keeping it lays them over their beds
// beside those that lie there, none of them short of gear; a draft that was made beside
// other covers is not kept.
func TestADraftsCoversAreKept(t *testing.T) {
	o := sampleOffice(t)
	was, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	d := drafted(t, o, desk.DraftOptions{Seed: 2, Steps: 3000}) // with another seed they may be for a corner only, and left out
	laid := d.View.Covers
	if len(laid) == 0 {
		t.Fatal("the demo's gear lies idle")
	}
	told := 0
	for _, n := range d.View.Notes {
		if strings.Contains(words.English().Text(n), " lies under ") {
			told++
		}
	}
	if told != len(laid) {
		t.Errorf("%d covers are told of %d", told, len(laid))
	}
	if _, _, err := o.KeepDraft(desk.Author{Entry: "keep", At: "2027-01-04T09:00:00Z"}, "Drafted"); err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if len(h.Covers) != len(was.Covers)+len(laid) {
		t.Fatalf("%d covers lie, %d before, %d are drafted", len(h.Covers), len(was.Covers), len(laid))
	}
	for _, c := range laid {
		if !slices.ContainsFunc(h.Covers, func(k place.CoverSpell) bool { return k.Bed == c.Bed && k.Spell == c.Spell }) {
			t.Errorf("%+v is not laid", c)
		}
	}
	if _, _, err := o.KeepDraft(desk.Author{Entry: "again", At: "2027-01-04T09:30:00Z"}, "Again"); err == nil {
		t.Error("a draft was kept beside other covers than it was made for")
	}
}
