package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/plan"
	"garner/internal/words"
)

// What stands in an address is read as it was written.
func TestTriedChangesStandInTheAddress(t *testing.T) {
	for _, text := range []string{"oni-27:date=2027-03-20", "a:b:area_m2=2.5", "oni-27:clear_by=", "oni-27:remove=",
		"new:add=bed=h2;crop=onion;date=2027-03-20;area_m2=2"} {
		c, err := readChange(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if got := writeChange(c); got != text {
			t.Errorf("%s is written back as %s", text, got)
		}
	}
	for _, text := range []string{"", "oni-27", "date=2027-03-20", "oni-27:date=soon", "oni-27:colour=red", "oni-27:area_m2=-1", ":date=2027-03-20"} {
		if c, err := readChange(text); err == nil {
			t.Errorf("%q is taken for %+v", text, c)
		}
	}
}

// A later change takes the place of an earlier one of the same thing.
func TestALaterChangeTakesThePlaceOfAnEarlierOne(t *testing.T) {
	query := url.Values{tryName: {"a:date=2027-03-01", "b:bed=h1", "a:date=2027-03-08", "c:add=bed=h1;date=2027-04-01", "c:date=2027-04-08",
		"d:add=bed=h1", "d:remove="}}
	changes, faults := readTried(query)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	want := "a:date=2027-03-08 b:bed=h1 c:add=bed=h1;date=2027-04-08"
	if got := strings.Join(writtenTries(changes), " "); got != want {
		t.Errorf("tried are %s, want %s", got, want)
	}
	many := url.Values{}
	for i := range mostTried + 1 {
		many.Add(tryName, "p"+string(rune('a'+i))+":bed=h1")
	}
	if _, faults := readTried(many); len(faults) != 1 {
		t.Errorf("more than %d changes give %v", mostTried, faults)
	}
}

// A form sent without script leads to the page's address with what was changed,
// and with nothing that was not.
func TestAChangeFormLeadsToAnAddress(t *testing.T) {
	s, _ := demo()
	p := plantingOf(t, s, "oni-27")
	query := url.Values{"change": {p.ID}, "date": {"2027-03-20"}, "bed": {p.Bed}, "area_m2": {plainNumber(p.AreaM2)}, "clear_by": {p.ClearBy.String()}}
	w := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "")
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d", w.Code)
	}
	at, err := url.Parse(w.Header().Get("Location"))
	if err != nil || at.Path != "/vegetable/onion" || strings.Join(at.Query()[tryName], " ") != "oni-27:date=2027-03-20" || len(at.Query()) != 1 {
		t.Errorf("it leads to %s", w.Header().Get("Location"))
	}
	// Back at its own date nothing is tried.
	query.Set("date", p.Date.String())
	query.Set(tryName, "oni-27:date=2027-03-20")
	if got := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "").Header().Get("Location"); got != "/vegetable/onion" {
		t.Errorf("put back by hand it leads to %s", got)
	}
}

func plantingOf(t *testing.T, s *Server, id string) plan.Planting {
	t.Helper()
	office, err := s.offices("")
	if err != nil {
		t.Fatal(err)
	}
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range h.Plantings {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("the demo has no %s", id)
	return plan.Planting{}
}

// Nonsense in a field is told beside it, and what was typed is kept.
func TestNonsenseInAChangeIsToldBesideItsField(t *testing.T) {
	s, _ := demo()
	for field, typed := range map[string]string{"date": "soon", "area_m2": "<b>much", "clear_by": "31 June", "bed": ""} {
		query := url.Values{"change": {"oni-27"}, field: {typed}}
		w := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "")
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", field, w.Code)
			continue
		}
		page := read(t, w.Body.String())
		form := page.one(t, "details", "id", "change-oni-27")
		if _, open := form.attrs["open"]; !open {
			t.Errorf("%s: the form is shut", field)
		}
		if field != "bed" {
			if got := form.one(t, "input", "name", field).attrs["value"]; got != typed {
				t.Errorf("%s: %q was typed, %q is kept", field, typed, got)
			}
		}
		if told := form.all(func(e *element) bool { return e.attrs["class"] == "err" }); len(told) != 1 {
			t.Errorf("%s: %d messages", field, len(told))
		}
	}
}

// A cover over the bed of a planting is tried like the rest.
func TestACoverIsTried(t *testing.T) {
	s, _ := demo()
	query := url.Values{"change": {"oni-27"}, "cover_kind": {"fleece"}, "cover_on": {"2027-03-27"}, "cover_off": {"2027-05-10"}}
	w := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "")
	at, err := url.Parse(w.Header().Get("Location"))
	if err != nil || w.Code != http.StatusSeeOther || at.Query().Get(tryName) != "oni-27:cover=fleece;2027-03-27;2027-05-10" {
		t.Fatalf("%d, it leads to %s", w.Code, w.Header().Get("Location"))
	}
	code, html := get(t, s, at.String())
	if code != http.StatusOK || !strings.Contains(html, "fleece over its bed from") {
		t.Errorf("%d, and no word of the cover", code)
	}
	query.Set("cover_off", "2027-03-01")
	w = ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "")
	form := read(t, w.Body.String()).one(t, "details", "id", "change-oni-27")
	if told := form.all(func(e *element) bool { return e.attrs["class"] == "err" }); w.Code != http.StatusUnprocessableEntity || len(told) != 1 {
		t.Errorf("%d, %d messages for a cover that comes off before it goes on", w.Code, len(told))
	}
	query.Set("cover_kind", "")
	query.Set(tryName, "oni-27:cover=fleece;2027-03-27;2027-05-10")
	if got := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "").Header().Get("Location"); got != "/vegetable/onion" {
		t.Errorf("taken off again it leads to %s", got)
	}
}

// What is tried is shown beside what stands: the change in words, the figures of
// both, and two drawings.
func TestATriedChangeStandsBesideWhatIs(t *testing.T) {
	s, office := demo()
	path := "/vegetable/onion?" + url.Values{tryName: {"oni-27:date=2027-03-06", "oni-27:area_m2=6.5"}}.Encode()
	code, html := get(t, s, path)
	if code != http.StatusOK {
		t.Fatal(code)
	}
	page := read(t, html)
	tried := page.one(t, "section", "class", "try")
	for _, want := range []string{"6 March in place of 27 March", "6.5 m²"} {
		if got := strings.ReplaceAll(tried.words(), "\u00a0", " "); !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	changes, _ := readTried(url.Values{tryName: {"oni-27:date=2027-03-06", "oni-27:area_m2=6.5"}})
	view, err := office.VegetableView("onion", changes)
	if err != nil {
		t.Fatal(err)
	}
	for _, kg := range []float64{eatenKg(view), eatenKg(view.Before)} {
		if want := words.English().Format().Kilograms(kg); !strings.Contains(strings.ReplaceAll(tried.words(), "\u00a0", " "), want) {
			t.Errorf("the figures do not have %s", want)
		}
	}
	if n := len(page.all(func(e *element) bool {
		return e.name == "svg" && (e.attrs["class"] == "stack" || e.attrs["class"] == "ribbon")
	})); n < 2 {
		t.Errorf("%d drawings, not before and after", n)
	}
	// The same page's parts alone.
	_, part := get(t, s, path, fragmentHeader, "vegetable")
	if strings.Contains(part, "<html") || !strings.Contains(part, `data-part="stack"`) || !strings.Contains(part, `data-part="lane-oni-27"`) {
		t.Error("the parts alone are not the parts alone")
	}
}

// A planting may be tried more, and one may be left out.
func TestAPlantingIsTriedMoreOrLeftOut(t *testing.T) {
	s, _ := demo()
	query := url.Values{"add": {"oni-27"}, "date": {"2027-04-03"}, "bed": {"h1"}, "area_m2": {"1,5"}}
	at := ask(s.Handler(), "GET", "/vegetable/onion?"+query.Encode(), "").Header().Get("Location")
	code, html := get(t, s, at)
	if code != http.StatusOK || !strings.Contains(html, `data-part="lane-oni-27-2"`) {
		t.Fatalf("%d: a planting more has no lane at %s", code, at)
	}
	code, html = get(t, s, "/vegetable/onion?"+url.Values{tryName: {"oni-27:remove="}}.Encode())
	if code != http.StatusOK || strings.Contains(html, `data-part="lane-oni-27"`) {
		t.Errorf("%d: a planting left out still has a lane", code)
	}
}

// A change tried on the table marks the rows it moves.
func TestTheTableIsTriedToo(t *testing.T) {
	s, _ := demo()
	code, html := get(t, s, "/?"+url.Values{tryName: {"oni-27:remove="}}.Encode())
	if code != http.StatusOK {
		t.Fatal(code)
	}
	page := read(t, html)
	row := page.one(t, "section", "data-vegetable", "onion")
	if changed := row.all(func(e *element) bool { return e.attrs["class"] == "changed" }); len(changed) != 1 {
		t.Errorf("without its sets the row of onions says %q", row.words())
	}
	page.one(t, "section", "class", "try")
}

// What was tried is kept as one entry, once however often the form is sent, and
// taken back by undo.
func TestWhatWasTriedIsKeptAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	date := func() string {
		row, err := office.Row("plantings", "oni-27")
		if err != nil {
			t.Fatal(err)
		}
		return row.Cells["date"]
	}
	was := date()
	page := open(t, h, "/vegetable/onion?"+url.Values{tryName: {"oni-27:date=2027-03-20", "oni-27:area_m2=6.5"}}.Encode())
	form := formTo(t, page, "/try/keep")
	entries, err := office.Entries(100)
	if err != nil {
		t.Fatal(err)
	}
	values := url.Values{} // of every hidden field, the tried ones being of one name
	for _, input := range form.named("input") {
		values.Add(input.attrs["name"], input.attrs["value"])
	}
	var after *element
	for range 2 {
		after = follow(t, h, ask(h, "POST", "/try/keep", values.Encode()))
	}
	row, err := office.Row("plantings", "oni-27")
	if err != nil || row.Cells["date"] != "2027-03-20" || row.Cells["area_m2"] != "6.5" {
		t.Errorf("kept, the planting is %v (%v)", row, err)
	}
	now, err := office.Entries(100)
	if err != nil {
		t.Fatal(err)
	}
	if len(now) != len(entries)+1 {
		t.Errorf("%d entries were made", len(now)-len(entries))
	}
	if after.all(func(e *element) bool { return e.attrs["class"] == "try" }) != nil {
		t.Error("what was kept is still being tried")
	}
	follow(t, h, post(t, h, formTo(t, after, "/undo")))
	if got := date(); got != was {
		t.Errorf("taken back, the date is %s, and was %s", got, was)
	}
}

// Nothing tried, nothing kept.
func TestNothingTriedIsNotKept(t *testing.T) {
	h, office := garden(t, words.English())
	before, _ := office.Entries(100)
	for _, form := range []string{"entry=x", "entry=x&try=", "entry=x&try=oni-27%3Adate%3Dsoon", "entry=x&try=nobody%3Abed%3Dh1", "entry=x&try=oni-27%3Abed%3Dnowhere"} {
		if w := ask(h, "POST", "/try/keep", form); w.Code < 400 || w.Code >= 500 {
			t.Errorf("%s: %d", form, w.Code)
		}
	}
	if now, _ := office.Entries(100); len(now) != len(before) {
		t.Error("something was written")
	}
}
