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
	if said := at.one(t, "div", "class", "said").words(); !strings.Contains(said, "wish to keep") || !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	if d := office.Drafting(); d == nil || d.Asked.Seconds != 600 {
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

// What cannot be asked for is told beside its field, wishes that name what is not there
// above the form; nothing is begun or kept.
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
	w := post(t, h, form, "seconds", "1", "crop", "moonflower")
	if said := read(t, w.Body.String()).one(t, "div", "class", "errs").words(); w.Code != http.StatusUnprocessableEntity || !strings.Contains(said, "moonflower") {
		t.Errorf("%d: %q", w.Code, said)
	}
	if rows, err := office.Rows("wishes"); err != nil || len(rows) > 0 || office.Drafting() != nil {
		t.Errorf("kept are %v, %v", rows, err)
	}
	if w := ask(h, "POST", "/draft/keep", ""); w.Code != http.StatusNotFound {
		t.Errorf("nothing was kept with %d", w.Code)
	}
}

// What is wished is kept: the page opens with it, it is changed in the place where it was
// told, stands in the history and is given up.
func TestWishesAreKeptWithTheHolding(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/draft"), "/draft")
	pin := form.all(func(e *element) bool { return e.attrs["name"] == "pin" })[0].attrs["value"]
	wish := func(typed string) string {
		t.Helper()
		return follow(t, h, ask(h, "POST", "/draft", "seconds=0.01&"+typed)).one(t, "div", "class", "said").words()
	}
	wish("pin=" + pin + "&crop=carrot&bed=&hours=9")
	rows, err := office.Rows("wishes")
	if err != nil || len(rows) != 3 {
		t.Fatal(rows, err)
	}
	said := wish("pin=" + pin + "&crop=carrot&bed=&hours=8")
	now, err := office.Rows("wishes")
	if err != nil || len(now) != 3 || now[2].ID != rows[2].ID || now[2].Cells["hours"] != "8" || now[0].Version != rows[0].Version || !strings.Contains(said, "8 hours a week") {
		t.Errorf("%v, %v; said %q", now, err, said)
	}
	if list := open(t, h, "/history").words(); !strings.Contains(list, "8 hours a week") || !strings.Contains(list, "what is asked of a drafted year") {
		t.Errorf("the history says %q", list)
	}
	for !office.Drafting().Done {
		time.Sleep(20 * time.Millisecond)
	}
	at := open(t, h, "/draft")
	on := at.all(func(e *element) bool { _, checked := e.attrs["checked"]; return e.attrs["name"] == "pin" && checked })
	if len(on) != 1 || on[0].attrs["value"] != pin || at.one(t, "input", "name", "hours").attrs["value"] != "8" {
		t.Errorf("pinned are %v", on)
	}
	chosen := at.all(func(e *element) bool { _, is := e.attrs["selected"]; return is && e.attrs["value"] == "carrot" })
	if len(chosen) != 1 {
		t.Errorf("%d crops stay out", len(chosen))
	}
	wish("hours=")
	if now, err = office.Rows("wishes"); err != nil || len(now) != 0 {
		t.Errorf("%v, %v", now, err)
	}
}

// Wishes that cannot hold together are named on the page, and stay to be changed.
func TestKeptWishesThatConflictAreNamed(t *testing.T) {
	h, office := garden(t, words.English())
	held, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	at := open(t, h, "/draft")
	pin := at.all(func(e *element) bool { return e.attrs["name"] == "pin" })[0].attrs["value"]
	crop := ""
	for _, p := range held.Plantings {
		if p.ID == pin {
			crop = p.Crop
		}
	}
	follow(t, h, post(t, h, formTo(t, at, "/draft"), "seconds", "1", "pin", pin, "crop", crop, "bed", ""))
	for !office.Drafting().Done {
		time.Sleep(20 * time.Millisecond)
	}
	at = open(t, h, "/draft")
	if said := at.one(t, "div", "class", "errs").words(); !strings.Contains(said, pin) || !strings.Contains(said, "2 wishes") {
		t.Errorf("it says %q", said)
	}
	on := at.all(func(e *element) bool { _, checked := e.attrs["checked"]; return e.attrs["name"] == "pin" && checked })
	if len(on) != 1 {
		t.Errorf("%d are pinned", len(on))
	}
}
