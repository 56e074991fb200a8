package web

import (
	"strings"
	"testing"

	"garner/internal/words"
)

// The kitchen's hours are set from the stores, said, and what is none is refused.
func TestTheKitchensHoursAreSet(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/stores")
	if !strings.Contains(page.words(), "Not limited") {
		t.Error("the stores do not say that the hours are not limited")
	}
	path := ""
	for _, a := range page.named("a") {
		if a.words() == "Set the hours" {
			path = a.attrs["href"]
		}
	}
	form := open(t, h, path)
	for _, a := range form.named("a") {
		if strings.HasSuffix(a.attrs["href"], "/remove") {
			t.Error("the holding can be removed")
		}
	}
	if w := post(t, h, formTo(t, form, path), "kitchen_h_per_week", "-3"); w.Code != 422 {
		t.Errorf("-3 hours: %d", w.Code)
	}
	next := follow(t, h, post(t, h, formTo(t, open(t, h, path), path), "kitchen_h_per_week", "1.5"))
	if !strings.Contains(next.words(), "1.5 h a week") {
		t.Errorf("the stores do not say the hours: %s", next.words())
	}
	if now, err := office.Holding(); err != nil || now.KitchenH != 1.5 {
		t.Errorf("%v, %v", now.KitchenH, err)
	}
}
