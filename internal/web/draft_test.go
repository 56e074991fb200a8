package web

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"garner/internal/words"
)

// A year is asked for, stopped, shown bed by bed, kept as a draft and set beside the
// plan, without script.
func TestAYearIsDraftedAndKept(t *testing.T) {
	h, office := garden(t, words.English())
	at := open(t, h, "/draft")
	pins := at.all(func(e *element) bool { return e.attrs["name"] == "pin" })
	if len(pins) == 0 {
		t.Fatal("nothing can be pinned")
	}
	at = follow(t, h, post(t, h, formTo(t, at, "/draft"), "seconds", "600", "pin", pins[0].attrs["value"]))
	if d := office.Drafting(); d == nil || len(d.Asked.Pins) != 1 {
		t.Fatalf("asked is %+v", d)
	}
	if !strings.Contains(at.words(), "Look again") {
		t.Error("there is no way to look again")
	}
	follow(t, h, post(t, h, formTo(t, at, "/draft/stop")))
	for !office.Drafting().Done {
		time.Sleep(20 * time.Millisecond)
	}
	d := office.Drafting()
	at = open(t, h, "/draft")
	beds := at.all(func(e *element) bool { return e.attrs["class"] == "part draft-bed" })
	if d.View == nil || len(beds) == 0 || !strings.Contains(at.words(), words.English().Text(d.View.Rows[0].Says)) {
		t.Fatalf("%d beds are shown of %+v", len(beds), d)
	}
	at = follow(t, h, post(t, h, formTo(t, at, "/draft/keep")))
	if said := at.one(t, "div", "class", "said").words(); !strings.Contains(said, "Drafted 2027") || !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	open(t, h, "/plans/compare?a=p2027&b="+office.Drafting().Kept)
	if plans, err := office.PlansView(); err != nil || plans.InForce != "p2027" || len(plans.Plans) != 3 {
		t.Errorf("%+v, %v", plans, err)
	}
}

// What cannot be asked for is told beside its field, and nothing is begun. Wishes that
// name what is not there are told when the draft comes to nothing.
func TestNonsenseIsNotDrafted(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/draft"), "/draft")
	for _, typed := range [][]string{{"seconds", "soon"}, {"seconds", "0"}, {"seconds", "601"}, {"seconds", ""}, {"hours", "-1"}, {"hours", "NaN"}, {"hours", "169"}} {
		w := post(t, h, form, typed...)
		page := read(t, w.Body.String())
		if w.Code != http.StatusUnprocessableEntity || page.one(t, "input", "name", typed[0]).attrs["aria-invalid"] != "true" {
			t.Errorf("%v: %d", typed, w.Code)
		}
	}
	if office.Drafting() != nil {
		t.Error("nonsense was begun")
	}
	if w := post(t, h, form, "seconds", "1", "crop", "moonflower"); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	for !office.Drafting().Done {
		time.Sleep(20 * time.Millisecond)
	}
	if at := open(t, h, "/draft"); !strings.Contains(at.one(t, "div", "class", "errs").words(), "moonflower") {
		t.Errorf("it says %q", at.words())
	}
	if w := ask(h, "POST", "/draft/keep", ""); w.Code != http.StatusNotFound {
		t.Errorf("nothing was kept with %d", w.Code)
	}
}
