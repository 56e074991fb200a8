package web

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/emersion/go-ical"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// The calendar has the same jobs under ids of their own, as an independent parser reads it.
func TestTheFeedIsACalendar(t *testing.T) {
	s, office := demo()
	code, body := get(t, s, "/week.ics?days=28")
	c, err := ical.NewDecoder(bytes.NewBufferString(body)).Decode()
	if code != http.StatusOK || err != nil {
		t.Fatal(code, err)
	}
	view, err := office.WeekView(desk.JobsOptions{Days: 28, People: 1})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, e := range c.Events() {
		id, _ := e.Props.Text(ical.PropUID)
		seen[id] = true
	}
	for _, l := range view.Lines() {
		if !seen[l.ID+"@larkmeer.garner"] {
			t.Errorf("%s is not in the calendar", l.ID)
		}
	}
	if len(seen) != len(view.Lines()) || len(seen) == 0 {
		t.Errorf("%d events of %d jobs", len(seen), len(view.Lines()))
	}
	if code, _ := get(t, s, "/week.ics?days=many"); code != http.StatusUnprocessableEntity && code != http.StatusBadRequest {
		t.Errorf("nonsense gives %d", code)
	}
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, httptest.NewRequest("GET", "http://localhost/week.ics", nil))
	if got := w.Header().Get("Content-Type"); got != "text/calendar; charset=utf-8" {
		t.Errorf("it is sent as %q", got)
	}
}

// A job of the grower's own is added, joins the week, is changed and removed.
func TestAJobOfOnesOwn(t *testing.T) {
	h, _ := garden(t, words.English())
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/own_jobs/new"), "/own_jobs/new"), "name", "Sharpen the spade", "date", "2027-01-06", "minutes", "15", "bed", "h2"))
	if got := page.words(); !strings.Contains(got, "Sharpen the spade") || !strings.Contains(got, "Once, on 6 January 2027; Home 2") {
		t.Errorf("listed: %s", got)
	}
	if got := open(t, h, "/week").one(t, "li", "id", "stop-bed-h2").words(); !strings.Contains(got, "Sharpen the spade") || !strings.Contains(got, "15 minutes") {
		t.Errorf("the week: %s", got)
	}
	edit := page.all(func(e *element) bool { return strings.HasSuffix(e.attrs["href"], "/edit") })[0].attrs["href"]
	page = follow(t, h, post(t, h, formTo(t, open(t, h, edit), edit), "every_d", "7"))
	if got := page.words(); !strings.Contains(got, "Every 7 days from 6 January 2027") {
		t.Errorf("changed: %s", got)
	}
	remove := strings.TrimSuffix(edit, "/edit") + "/remove"
	page = follow(t, h, post(t, h, formTo(t, open(t, h, remove), remove)))
	if !strings.Contains(page.words(), "None yet") {
		t.Error("it is not removed")
	}
}

// The sowing list has every sowing of the year ahead, with its seed and what is on hand.
func TestTheSowingList(t *testing.T) {
	s, office := demo()
	code, html := get(t, s, "/week/sowings")
	view, err := office.SowingsView()
	if code != http.StatusOK || err != nil {
		t.Fatal(code, err)
	}
	rows := read(t, html).one(t, "tbody").named("tr")
	if len(rows) != len(view.Sowings) || len(rows) == 0 {
		t.Fatalf("%d rows of %d sowings", len(rows), len(view.Sowings))
	}
	before := view.Today
	for i, l := range view.Sowings {
		if l.Date < before && l.Date >= view.Today || l.BetweenM <= 0 {
			t.Errorf("%s on %s: out of order, or no distances", l.Planting, l.Date)
		}
		before = max(l.Date, view.Today)
		if got := rows[i].words(); !strings.Contains(got, l.BedName) {
			t.Errorf("row %d: %s", i, got)
		}
	}
}

// A holding that has told nothing has its week, and it leads on.
func TestTheWeekOfAnEmptyHolding(t *testing.T) {
	h, _ := beginning(t, func(*holding.Holding) {})
	for path, next := range map[string]string{"/week": "/own_jobs/new", "/week/sowings": "/onhand", "/own_jobs": "/own_jobs/new", "/week.ics": ""} {
		w := ask(h, "GET", path, "")
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), next) {
			t.Errorf("%s: %d", path, w.Code)
		}
	}
}

// What a site does not allow is ticked on its form, and the jobs heed it.
func TestWhatASiteForbids(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/sites/home/edit"), "/sites/home/edit")
	values := form.filled()
	v := url.Values{}
	for name, value := range values {
		v.Set(name, value)
	}
	v["not_allowed"] = []string{"fires", "hoses"}
	follow(t, h, ask(h, "POST", "/sites/home/edit", v.Encode()))
	row, err := office.Row("sites", "home")
	if err != nil || row.Cells["not_allowed"] != "fires; hoses" {
		t.Errorf("%v: %q", err, row.Cells["not_allowed"])
	}
	ticked := 0
	for _, e := range formTo(t, open(t, h, "/sites/home/edit"), "/sites/home/edit").named("input") {
		if _, on := e.attrs["checked"]; on && e.attrs["name"] == "not_allowed" {
			ticked++
		}
	}
	if ticked != 2 {
		t.Errorf("%d are ticked", ticked)
	}
	v["not_allowed"] = nil
	v.Set("base", number(row.Version))
	v.Set("entry", "none-forbidden")
	follow(t, h, ask(h, "POST", "/sites/home/edit", v.Encode()))
	if row, err := office.Row("sites", "home"); err != nil || row.Cells["not_allowed"] != "" {
		t.Errorf("%v: %q", err, row.Cells["not_allowed"])
	}
}
