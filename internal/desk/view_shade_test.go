package desk

import (
	"math"
	"testing"

	"garner/internal/fault"
	"garner/internal/place"
)

// The demo's border along the wall has about half the open sky's light in the
// mean of the year, the hedge takes about a tenth of bed 1's, and what is told of the
// beds on the page is what the command line tells.
func TestShadeOfTheDemo(t *testing.T) {
	h := sampleHolding(t)
	all := map[string][12]float64{}
	for _, b := range Light(h).Beds {
		all[b.Bed] = b.Light
	}
	if len(all) != len(h.Beds) {
		t.Fatalf("%d beds of %d", len(all), len(h.Beds))
	}
	o := NewOffice(newShelf(h))
	v, err := o.ShadeView("home", 3)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]float64{}
	for _, b := range v.Beds {
		if b.Light != all[b.ID] {
			t.Errorf("%s: %v on the page, %v at the prompt", b.ID, b.Light, all[b.ID])
		}
		seen[b.ID] = b.Year
	}
	if math.Abs(seen["hb"]-0.55) > 0.04 {
		t.Errorf("the wall border has %.2f of the light", seen["hb"])
	}
	hedge := 0.0
	for _, taken := range v.Taken {
		if taken.Feature == "Beech hedge" && taken.Bed == "Home 1" {
			hedge = taken.Share
		}
	}
	if math.Abs(hedge-0.10) > 0.03 {
		t.Errorf("the hedge takes %.3f of the light on bed 1", hedge)
	}
	if len(v.Map.Light) == 0 || len(v.Features) == 0 || len(v.Undrawn) != 0 || len(v.Wrong) != 0 {
		t.Errorf("map %d, features %d, undrawn %d, wrong %v", len(v.Map.Light), len(v.Features), len(v.Undrawn), v.Wrong)
	}
}

// What is asked wrongly is told; a site without a plan and a bed that is not
// drawn have no shade.
func TestShadeViewAsksWrongly(t *testing.T) {
	h := sampleHolding(t)
	o := NewOffice(newShelf(h))
	if _, err := o.ShadeView("moon", 3); fault.KindOf(err) != fault.NotFound {
		t.Errorf("an unknown site gives %v", err)
	}
	if _, err := o.ShadeView("", 13); fault.KindOf(err) != fault.OutOfRange {
		t.Errorf("month 13 gives %v", err)
	}
	h.Features[0].HeightM = 0
	h.Beds[0].At, h.Beds[0].Light = place.Spot{}, 0.7
	v, err := o.ShadeView("", 0)
	if err != nil || v.Site.ID != "home" || v.Month != 1 || len(v.Wrong) != 1 || len(v.Undrawn) != 1 {
		t.Fatalf("%+v, %v", v, err)
	}
	if light := Light(h).Beds[0].Light; light[5] != 0.7 {
		t.Errorf("a bed that is not drawn has %v", light)
	}
}
