package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/cal"
)

// Every bed of a site stands once on its plan, has its lane, and is told in words.
func TestGroundShowsEveryBed(t *testing.T) {
	s, office := demo()
	view, err := office.GroundYearView("share", nil)
	if err != nil {
		t.Fatal(err)
	}
	page := open(t, s.Handler(), "/ground?site=share&at=2027-06-22")
	lanes := page.all(func(e *element) bool { return e.attrs["data-lane"] != "" })
	told := page.named("dt")
	if len(lanes) != len(view.Beds) || len(told) != len(view.Beds) {
		t.Fatalf("%d lanes and %d beds told, of %d", len(lanes), len(told), len(view.Beds))
	}
	day := cal.Of(2027, 6, 22)
	for i, b := range view.Beds {
		if lanes[i].attrs["data-lane"] != b.ID || told[i].words() != b.Name {
			t.Errorf("%s: lane of %s, told %s", b.ID, lanes[i].attrs["data-lane"], told[i].words())
		}
		links := page.all(func(e *element) bool { return e.attrs["class"] == "plan-bed" && e.attrs["data-bed"] == b.ID })
		if len(links) != 2 { // for a desk and for a phone
			t.Fatalf("%s stands %d times on the plans", b.ID, len(links))
		}
		for _, p := range b.On(day) {
			if p.Held != nil && !strings.Contains(links[0].attrs["aria-label"], p.Held.Name) {
				t.Errorf("%s is said to hold %q, and not %s", b.ID, links[0].attrs["aria-label"], p.Held.Name)
			}
		}
		for j := range b.Held {
			if name := b.Held[j].Name; !strings.Contains(strings.ToLower(page.words()), strings.ToLower(name)) {
				t.Errorf("%s is not told", name)
			}
		}
	}
}

// A form tries a planting in another bed and leads there; nonsense is told beside
// its field, and the address of what is tried keeps the site and the day.
func TestGroundForms(t *testing.T) {
	s, _ := demo()
	query := url.Values{"site": {"share"}, "at": {"2027-05-01"}, "change": {"pot-27t"}, "bed": {"t1"}, "date": {"2027-02-22"}}
	w := ask(s.Handler(), "GET", "/ground?"+query.Encode(), "")
	at, err := url.Parse(w.Header().Get("Location"))
	if w.Code != http.StatusSeeOther || err != nil {
		t.Fatalf("%d %v", w.Code, err)
	}
	if q := at.Query(); q.Get("site") != "share" || q.Get("at") != "2027-05-01" || q.Get("bed") != "t1" || q.Get(tryName) != "pot-27t:bed=t1" {
		t.Errorf("it leads to %s", at)
	}
	query.Set("date", "soon")
	w = ask(s.Handler(), "GET", "/ground?"+query.Encode(), "")
	if w.Code != http.StatusUnprocessableEntity {
		t.Fatalf("nonsense: %d", w.Code)
	}
	form := read(t, w.Body.String()).one(t, "details", "id", "change-pot-27t")
	if got := form.one(t, "input", "name", "date").attrs["value"]; got != "soon" {
		t.Errorf("soon was typed, %q is kept", got)
	}
	if told := form.all(func(e *element) bool { return e.attrs["class"] == "err" }); len(told) != 1 {
		t.Errorf("%d messages", len(told))
	}
}

// What is tried is told with what it does, and what no longer fits.
func TestGroundTellsWhatATryDoes(t *testing.T) {
	s, _ := demo()
	page := open(t, s.Handler(), "/ground?site=share&try=pot-27m%3Abed%3Ds5")
	tried := page.one(t, "section", "class", "try").words()
	for _, want := range []string{"in Row 5 in place of Row 4", "home-grown", "Row 5: no room for maincrop potatoes"} {
		if !strings.Contains(tried, want) {
			t.Errorf("the try does not say %q: %s", want, tried)
		}
	}
}

// Parts that are on the screen already are not sent again; the others are.
func TestGroundSendsWhatChanged(t *testing.T) {
	s, _ := demo()
	page := open(t, s.Handler(), "/ground?site=share")
	var keys []string
	for _, e := range page.all(func(e *element) bool { return e.attrs["data-key"] != "" }) {
		keys = append(keys, e.attrs["data-key"])
	}
	status, body := get(t, s, "/ground?site=share&try=pot-27m%3Adate%3D2027-05-22", "X-Fragment", "ground", "X-Have", strings.Join(keys, " "))
	if status != http.StatusOK {
		t.Fatal(status)
	}
	part := read(t, body)
	sent := part.all(func(e *element) bool { return e.attrs["data-lane"] != "" })
	if len(sent) != 1 || sent[0].attrs["data-lane"] != "s4" {
		t.Errorf("%d lanes are sent, one is touched", len(sent))
	}
	if same := part.all(func(e *element) bool { _, is := e.attrs["data-same"]; return is }); len(same) != len(keys)-1 {
		t.Errorf("%d lanes are told to be the same, of %d", len(same), len(keys))
	}
}

// Addresses that name nothing are told so; a day beyond the year is its last.
func TestGroundRefuses(t *testing.T) {
	s, _ := demo()
	for path, want := range map[string]int{"/ground?site=moon": http.StatusNotFound, "/ground?try=x": http.StatusUnprocessableEntity, "/ground?change=none": http.StatusNotFound,
		"/ground?at=soon": http.StatusOK, "/ground?at=2099-01-01": http.StatusOK, "/ground?bed=none": http.StatusOK} {
		if w := ask(s.Handler(), "GET", path, ""); w.Code != want {
			t.Errorf("%s: %d, want %d", path, w.Code, want)
		}
	}
}
