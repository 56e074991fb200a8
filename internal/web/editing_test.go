package web

import (
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"garner/internal/desk"
	"garner/internal/store"
	"garner/internal/words"
)

// garden is a server over a stored copy of the demo holding, and its office.
func garden(t *testing.T, w *words.Catalogue) (http.Handler, *desk.Office) {
	t.Helper()
	office := emptyOffice(t)
	sample, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-01-04T08:00:00Z"}, sample); err != nil {
		t.Fatal(err)
	}
	return newServer(t, optionsOver(office, w)), office
}

func emptyOffice(t *testing.T) *desk.Office {
	t.Helper()
	data, err := store.Folder(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	kept, err := data.Create("household")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { kept.Close(); data.Close() })
	return desk.NewOffice(learned{kept})
}

func optionsOver(office *desk.Office, w *words.Catalogue) Options {
	return Options{Log: slog.New(slog.NewTextHandler(os.Stderr, nil)), Offices: func(string) (*desk.Office, error) { return office, nil }, Words: w, Who: "Ottilie",
		Sample: func(by desk.Author, _ string) error {
			h, err := desk.Sample("")
			if err != nil {
				return err
			}
			return office.Begin(by, h)
		},
		Now: func() time.Time { return time.Date(2027, 1, 4, 9, 0, 0, 0, time.UTC) }}
}

// open returns a page that must be there.
func open(t *testing.T, h http.Handler, path string) *element {
	t.Helper()
	w := ask(h, "GET", path, "")
	if w.Code != http.StatusOK {
		t.Fatalf("%s: %d %s", path, w.Code, read(t, w.Body.String()).words())
	}
	return read(t, w.Body.String())
}

// send posts a form of a page with some fields typed anew.
func post(t *testing.T, h http.Handler, form *element, typed ...string) *httptest.ResponseRecorder {
	t.Helper()
	values := url.Values{}
	for name, value := range form.filled() {
		values.Set(name, value)
	}
	for i := 0; i+1 < len(typed); i += 2 {
		values.Set(typed[i], typed[i+1])
	}
	return ask(h, "POST", form.attrs["action"], values.Encode())
}

// formTo is the form of a page that is sent to a path.
func formTo(t *testing.T, page *element, path string) *element {
	t.Helper()
	return page.one(t, "form", "action", path)
}

// follow opens the page that a form leads to.
func follow(t *testing.T, h http.Handler, w *httptest.ResponseRecorder) *element {
	t.Helper()
	if w.Code != http.StatusSeeOther {
		said := read(t, w.Body.String()).all(func(e *element) bool {
			return e.attrs["class"] == "err" || e.attrs["class"] == "errs" || e.name == "h1"
		})
		var told []string
		for _, e := range said {
			told = append(told, e.words())
		}
		t.Fatalf("the form got %d: %s", w.Code, strings.Join(told, "; "))
	}
	return open(t, h, w.Header().Get("Location"))
}

func TestAPlantingIsAddedChangedRemovedAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	before, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	form := formTo(t, open(t, h, "/plantings/new?bed=h4"), "/plantings/new")
	if form.filled()["bed"] != "h4" {
		t.Error("the bed given in the address is not chosen")
	}
	page := follow(t, h, post(t, h, form, "grown", "radish/summer", "date", "2027-03-20", "date_within_d", "7", "area_m2", "1,5"))
	said := page.one(t, "div", "class", "said").words()
	if !strings.Contains(strings.ToLower(said), "radish") || !strings.Contains(said, "Undo") {
		t.Errorf("after adding: %q", said)
	}
	line := page.all(func(e *element) bool {
		return strings.Contains(e.attrs["data-find"], "radish") && strings.Contains(e.words(), "mid March")
	})
	if len(line) != 1 {
		t.Fatalf("%d lines for the new planting", len(line))
	}
	if !strings.Contains(line[0].words(), "1.5\u00a0m²") && !strings.Contains(line[0].words(), "1.5 m²") {
		t.Errorf("the list does not tell the new planting: %d", len(line))
	}
	edit := line[0].one(t, "p", "class", "do").one(t, "a").attrs["href"]
	follow(t, h, post(t, h, formTo(t, open(t, h, edit), edit), "area_m2", "2"))
	remove := strings.TrimSuffix(edit, "/edit") + "/remove"
	follow(t, h, post(t, h, formTo(t, open(t, h, remove), remove)))
	for range 3 {
		follow(t, h, post(t, h, open(t, h, "/history").one(t, "ul", "class", "list entries").named("li")[lastStanding(t, h)].one(t, "form")))
	}
	after, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	for name := range before {
		if string(before[name]) != string(after[name]) {
			t.Errorf("%s differs after three changes and three undos", name)
		}
	}
}

// lastStanding is the place in the history of the newest entry that can still be
// taken back and did not itself take something back.
func lastStanding(t *testing.T, h http.Handler) int {
	t.Helper()
	for i, e := range open(t, h, "/history").one(t, "ul", "class", "list entries").named("li") {
		what := strings.ToLower(e.words())
		if len(e.named("form")) == 1 && !strings.HasPrefix(what, "undid") && !strings.HasPrefix(what, "took back") && !strings.HasPrefix(what, "taken back") {
			return i
		}
	}
	t.Fatal("nothing can be taken back")
	return 0
}

// A form sent twice writes once.
func TestAFormSentTwiceWritesOnce(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/stores/new"), "/stores/new")
	for range 2 {
		w := post(t, h, form, "name", "Loft", "method", "cool shed", "capacity_kg", "20", "winter_c", "3", "summer_c", "19")
		follow(t, h, w)
	}
	stored, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, s := range stored.Stores {
		if s.Name == "Loft" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d stores were made", n)
	}
}

// What cannot be right is said beside its field, what was typed stays, and
// nothing is written.
func TestNonsenseIsSaidBesideItsField(t *testing.T) {
	h, office := garden(t, words.English())
	before, _ := office.Entries(100)
	for _, tc := range []struct{ path, field, typed string }{
		{"/plantings/new", "date", "soon"}, {"/plantings/new", "area_m2", "lots"}, {"/plantings/new", "area_m2", "-3"},
		{"/plantings/new", "area_m2", "99999"}, {"/plantings/new", "bed", "nowhere"}, {"/plantings/new", "grown", "unicorn/table"},
		{"/plantings/new", "years_old", "<script>alert(1)</script>"},
		{"/beds/new", "length_m", "0"}, {"/beds/new", "name", ""}, {"/beds/new", "light_share", "7"}, {"/beds/new", "order", "1.5"},
		{"/wants/new", "from", "Juneteenth"}, {"/wants/new", "kg_per_week", ""}, {"/wants/new", "vegetable", "dragon"},
		{"/stores/new", "winter_c", "warm"}, {"/stores/new", "capacity_kg", "1e400"}, {"/covers/new?bed=h1", "off", "2027-02-30"},
	} {
		path, _, _ := strings.Cut(tc.path, "?")
		form := formTo(t, open(t, h, tc.path), path)
		w := post(t, h, form, append(append([]string{}, sound[path]...), tc.field, tc.typed)...)
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s %s=%q: %d", tc.path, tc.field, tc.typed, w.Code)
			continue
		}
		page := read(t, w.Body.String())
		fields := page.all(func(e *element) bool { return e.attrs["id"] == "f-"+tc.field })
		if len(fields) != 1 || fields[0].attrs["aria-invalid"] != "true" {
			t.Errorf("%s %s=%q is not marked: %s", tc.path, tc.field, tc.typed, page.one(t, "form", "action", path).words()[:200])
			continue
		}
		wrong := page.all(func(e *element) bool { return e.attrs["id"] == "f-"+tc.field+"-wrong" })
		if len(wrong) != 1 || wrong[0].words() == "" {
			t.Errorf("%s %s=%q is not explained", tc.path, tc.field, tc.typed)
		}
		if got := formTo(t, page, path).filled()[tc.field]; got != tc.typed {
			t.Errorf("%s %s: typed %q, shown again %q", tc.path, tc.field, tc.typed, got)
		}
	}
	if after, _ := office.Entries(100); len(after) != len(before) {
		t.Errorf("%d entries were written", len(after)-len(before))
	}
}

// sound is what each form takes as it is.
var sound = map[string][]string{
	"/plantings/new": {"grown", "radish/summer", "bed", "h4", "date", "2027-03-20", "area_m2", "1"},
	"/beds/new":      {"name", "New bed", "length_m", "3", "width_m", "1.2", "site", "home"},
	"/wants/new":     {"vegetable", "radish", "kg_per_week", "0.2", "from", "1 May", "to", "June 30"},
	"/stores/new":    {"name", "Loft", "method", "cool shed", "capacity_kg", "20", "winter_c", "3", "summer_c", "19"},
	"/covers/new":    {"kind", "fleece", "on", "2027-10-01", "off", "2027-11-01"},
}

func TestEveryFormTakesWhatIsSound(t *testing.T) {
	h, _ := garden(t, words.English())
	for path, typed := range sound {
		address := path
		if path == "/covers/new" {
			address += "?bed=h2"
		}
		page := follow(t, h, post(t, h, formTo(t, open(t, h, address), path), typed...))
		if said := page.one(t, "div", "class", "said").words(); said == "" {
			t.Errorf("%s: nothing is said", path)
		}
	}
}

// Two tabs change one bed: the second is shown both versions and may choose.
func TestTheSecondOfTwoIsShownBoth(t *testing.T) {
	h, office := garden(t, words.English())
	first := formTo(t, open(t, h, "/beds/h1/edit"), "/beds/h1/edit")
	second := formTo(t, open(t, h, "/beds/h1/edit"), "/beds/h1/edit")
	follow(t, h, post(t, h, first, "name", "Herb bed"))
	w := post(t, h, second, "name", "Salad bed", "length_m", "7.5")
	if w.Code != http.StatusConflict {
		t.Fatalf("the second got %d", w.Code)
	}
	page := read(t, w.Body.String())
	if said := page.one(t, "tbody").words(); !strings.Contains(said, "Herb bed") || !strings.Contains(said, "Salad bed") || !strings.Contains(said, "7.5") {
		t.Errorf("both versions are not shown: %s", said)
	}
	follow(t, h, post(t, h, formTo(t, page, "/beds/h1/edit")))
	row, err := office.Row("beds", "h1")
	if err != nil || row.Cells["name"] != "Salad bed" || row.Cells["length_m"] != "7.5" {
		t.Errorf("kept %v, %v", row, err)
	}
}

// What hangs on a bed is listed before it goes, and comes back with it.
func TestRemovingABedSaysWhatHangsOnIt(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/beds/h1/remove")
	list := page.one(t, "ul", "class", "list").words()
	if !strings.Contains(list, "Onions") || !strings.Contains(list, "goes with it") {
		t.Errorf("listed: %s", list)
	}
	after := follow(t, h, post(t, h, formTo(t, page, "/beds/h1/remove")))
	if _, err := office.Row("beds", "h1"); err == nil {
		t.Fatal("the bed is still there")
	}
	follow(t, h, post(t, h, formTo(t, after, "/undo")))
	if _, err := office.Row("beds", "h1"); err != nil {
		t.Errorf("the bed did not come back: %v", err)
	}
}

// A double click on Undo takes back once, and what began the household stays.
func TestUndoTwiceTakesBackOnce(t *testing.T) {
	h, office := garden(t, words.English())
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/beds/h1/edit"), "/beds/h1/edit"), "name", "Herb bed"))
	form := formTo(t, page, "/undo")
	first, second := post(t, h, form), post(t, h, form)
	follow(t, h, second)
	if a, b := first.Header().Get("Location"), second.Header().Get("Location"); a != b {
		t.Errorf("led to %s and %s", a, b)
	}
	row, err := office.Row("beds", "h1")
	if err != nil || row.Cells["name"] != "Home 1" {
		t.Errorf("%v %v", row, err)
	}
	if w := ask(h, "POST", "/undo", "taken=begin"); w.Code != http.StatusConflict {
		t.Errorf("taking back the beginning got %d", w.Code)
	}
	if w := ask(h, "POST", "/undo", "taken=nothing&back=//elsewhere.example/"); w.Code != http.StatusNotFound {
		t.Errorf("taking back nothing got %d", w.Code)
	}
}

func TestListsAreSearched(t *testing.T) {
	h, _ := garden(t, words.English())
	page := open(t, h, "/plantings?q=carrot+home&show=all")
	lines := page.all(func(e *element) bool { return strings.HasPrefix(e.attrs["class"], "line ") })
	if len(lines) == 0 {
		t.Fatal("nothing was found")
	}
	for _, l := range lines {
		if text := strings.ToLower(l.words()); !strings.Contains(text, "carrot") || !strings.Contains(text, "home") {
			t.Errorf("found %q", text)
		}
	}
	if none := open(t, h, "/plantings?q=unicorn").one(t, "main").words(); !strings.Contains(none, "unicorn") {
		t.Errorf("for nothing found: %s", none)
	}
}
