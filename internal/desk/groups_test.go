package desk_test

import (
	"testing"

	"garner/internal/larder"
	"garner/internal/plan"
)

// A group that is wanted is a row of the table under its name, what it eats is what
// its sources give it, and its gap can be left.
func TestAGroupIsARowOfTheTable(t *testing.T) {
	o := office(t)
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	before, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	save := func(table string, cells map[string]string) {
		t.Helper()
		if _, err := o.Save(by(table+cells["vegetable"]+cells["name"]), table, "", cells, 0); err != nil {
			t.Fatal(err)
		}
	}
	save("groups", map[string]string{"id": "roots", "name": "roots"})
	save("members", map[string]string{"group": "roots", "vegetable": "carrot", "preference": "1"})
	save("members", map[string]string{"group": "roots", "vegetable": "beetroot", "preference": "2"})
	save("wants", map[string]string{"group": "roots", "portions_per_eater": "1"})
	after, err := o.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	if first := after.Vegetables[0]; first.Name != "carrot" || len(after.Vegetables) <= len(before.Vegetables) || after.Vegetables[1].Name != "roots" {
		t.Fatalf("the rows begin with %s and %s", first.Name, after.Vegetables[1].Name)
	}
	view, err := o.VegetableView("roots", nil)
	if err != nil {
		t.Fatal(err)
	}
	eaten, fed := total(view.Ribbon.FreshKg)+total(view.Ribbon.StoredKg), 0.0
	for _, s := range view.Sources {
		fed += total(s.FreshKg) + total(s.StoredKg)
	}
	if eaten <= 0 || eaten-fed > 1e-3 || fed-eaten > 1e-3 {
		t.Errorf("the group eats %g kg, its sources give it %g", eaten, fed)
	}
	if view.Ribbon.Gap == nil {
		t.Fatal("roots are there all year")
	}
	grown := map[string]bool{}
	for _, l := range view.Plantings {
		row, err := o.Row("plantings", l.ID)
		if err != nil {
			t.Fatal(err)
		}
		grown[row.Cells["crop"]] = true
	}
	if !grown["carrot"] || len(grown) != 1 || len(view.Crops) != 2 { // no beetroot is grown here
		t.Errorf("the group's page has plantings of %v and the crops %v", grown, view.Crops)
	}
	mended, err := o.MendView("roots", view.Ribbon.Gap.First, nil)
	if err != nil || mended.At < 0 {
		t.Fatal(mended, err)
	}
	if last := mended.Lines[len(mended.Lines)-1]; len(last.Try) != 1 || last.Try[0] != leaving(&view.Ribbon) {
		t.Errorf("leaving it is told as %+v", last)
	}
	if err := o.KeepTry(by("leave roots"), []plan.Change{leaving(&view.Ribbon)}); err != nil {
		t.Fatal(err)
	}
	now, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	want := larder.GapLeft{ID: "left-roots-1", Group: "roots", From: view.Ribbon.Gap.First, To: view.Ribbon.Gap.Last}
	if len(now.GapsLeft) != len(h.GapsLeft)+1 || now.GapsLeft[len(h.GapsLeft)] != want || len(now.Wants) != len(h.Wants)+1 {
		t.Errorf("left are %+v", now.GapsLeft)
	}
}

func total(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}
