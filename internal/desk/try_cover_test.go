package desk_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/plan"
)

// A cover that is tried lies over the bed of its planting, changes the table,
// and once kept is a row that can be taken back.
func TestACoverIsTriedKeptAndTakenBack(t *testing.T) {
	o := office(t)
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	covered := map[string]bool{}
	for _, c := range h.Covers {
		covered[c.Bed] = true
	}
	at := slices.IndexFunc(h.Plantings, func(p plan.Planting) bool { return p.Date > h.Today+30 && !covered[p.Bed] })
	p := h.Plantings[at]
	want := cover.Spell{Kind: cover.Tunnel, On: p.Date, Off: p.Date + 120}
	try := []plan.Change{{Action: desk.CoverAction, Planting: p.ID, Value: desk.WriteCover(want)}}
	tried, _, err := o.Tried(try)
	if err != nil {
		t.Fatal(err)
	}
	if last := tried.Covers[len(tried.Covers)-1]; last.Bed != p.Bed || last.Spell != want {
		t.Fatalf("tried %+v over bed %s", last, p.Bed)
	}
	v, err := o.VegetableView(strings.ReplaceAll(p.Crop, "-", " "), try)
	if err != nil {
		t.Fatal(err)
	}
	if v.Before == nil || reflect.DeepEqual(v.Ribbon.Food, v.Before.Ribbon.Food) {
		t.Error("the cover changes nothing at the table")
	}
	start := export(t, o)
	if err := o.KeepTry(by("keep a cover"), try); err != nil {
		t.Fatal(err)
	}
	now, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if len(now.Covers) != len(h.Covers)+1 || now.Covers[len(now.Covers)-1].Spell != want {
		t.Errorf("kept covers %+v", now.Covers[len(h.Covers):])
	}
	if _, err := o.Undo(by("undo a cover"), by("keep a cover").Entry); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(start, export(t, o)) {
		t.Error("taken back, the holding is not what it was")
	}
}

func TestACoverIsReadWithItsFaults(t *testing.T) {
	for value, column := range map[string]string{
		"blanket;2027-03-01;": "kind", "open;2027-03-01;": "kind", "fleece;;": "on", "fleece;soon;": "on",
		"fleece;2027-03-01;2027-02-01": "off", "fleece;2027-03-01;later": "off", "": "kind"} {
		if _, err := desk.ReadCover(value); err == nil || err.At.Column != column {
			t.Errorf("%q: fault %v, want one of %s", value, err, column)
		}
	}
	s, err := desk.ReadCover("low tunnel;2027-03-01;")
	if err != nil || s.Off.IsSet() || desk.WriteCover(s) != "low tunnel;2027-03-01;" {
		t.Errorf("%+v, %v", s, err)
	}
}
