package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/words"
)

// newcomer is a server over an empty data directory.
func newcomer(t *testing.T, w *words.Catalogue) (http.Handler, *desk.Office) {
	t.Helper()
	office := emptyOffice(t)
	return newServer(t, optionsOver(office, w)), office
}

// shown reads the page that a form of the first run is answered with.
func shown(t *testing.T, h http.Handler, page *element, want int, typed ...string) *element {
	t.Helper()
	w := post(t, h, formTo(t, page, "/start"), typed...)
	if w.Code != want {
		t.Fatalf("got %d, want %d: %s", w.Code, want, read(t, w.Body.String()).one(t, "main").words())
	}
	return read(t, w.Body.String())
}

func TestWithoutAHoldingEveryPageLeadsToTheStart(t *testing.T) {
	h, _ := newcomer(t, words.English())
	for _, path := range []string{"/", "/plantings", "/beds", "/history", "/vegetable/leek", "/stores/new"} {
		w := ask(h, "GET", path, "")
		if w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/start" {
			t.Errorf("%s: %d %s", path, w.Code, w.Header().Get("Location"))
		}
	}
}

// A newcomer goes from nothing to a table without script: looks a place up, tells
// who eats, tells the ground, mends a line, and sees the table.
func TestFromNothingToATable(t *testing.T) {
	h, office := newcomer(t, words.English())
	page := open(t, h, "/start")
	page = shown(t, h, page, http.StatusOK, "q", "oxford", "go", "1")
	if list := page.one(t, "fieldset").words(); !strings.Contains(list, "Oxford") {
		t.Fatalf("places: %s", list)
	}
	page = shown(t, h, page, http.StatusOK, "go", "2")
	page = shown(t, h, page, http.StatusOK, "go", "3", "children", "2", "tick-leek", "often", "tick-tomato", "never")
	page = shown(t, h, page, http.StatusOK, "go", "4", "beds", "11 beds 6 x 1.2, tunnel 6 x 4",
		"lines", "leeks bed 1, 42 left\n\ncarrots early July, half bed 5\nsomething nobody can read")
	main := page.one(t, "main").words()
	if !strings.Contains(main, "12 beds") || strings.Count(main, "needs a word more") != 1 {
		t.Errorf("as understood: %s", main)
	}
	lines := page.all(func(e *element) bool { return e.attrs["name"] == "line" && e.name == "input" })
	if len(lines) != 3 || lines[2].attrs["value"] != "something nobody can read" {
		t.Fatalf("%d lines to mend", len(lines))
	}
	form := formTo(t, page, "/start").filled()
	mended := "entry=" + form["entry"] + "&step=4&go=5&q=oxford&place=" + form["place"] + "&zone=" + form["zone"] + "&height=&adults=2&children=2" +
		"&tick-leek=often&tick-carrot=often&beds=11+beds+6+x+1.2,+tunnel+6+x+4&line=leeks+bed+1,+42+left&line=carrots+early+July,+half+bed+5&line=spinach+in+the+tunnel,+a+row,+early+March"
	for range 2 { // sent twice it begins once
		if w := ask(h, "POST", "/start", mended); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/" {
			t.Fatalf("%d %s", w.Code, read(t, w.Body.String()).one(t, "main").words())
		}
	}
	stood, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if len(stood.Beds) != 12 || len(stood.Plantings) != 3 || len(stood.Wants) != 2 || stood.Eaters != 3 {
		t.Errorf("%d beds, %d plantings, %d wants, %g eaters", len(stood.Beds), len(stood.Plantings), len(stood.Wants), stood.Eaters)
	}
	if table := open(t, h, "/").one(t, "main").words(); !strings.Contains(table, "Leeks") {
		t.Errorf("the table does not name the leeks: %s", table[:200])
	}
}

// What cannot be used holds the step back, with what was typed.
func TestTheFirstRunHoldsBackWhatCannotBe(t *testing.T) {
	h, office := newcomer(t, words.English())
	first := open(t, h, "/start")
	for _, typed := range [][]string{
		{"q", "", "go", "2"}, {"q", "Zzzzqqqq", "go", "2"}, {"q", "oxford", "place", "ukmo-oxford", "height", "high", "go", "2"},
		{"q", "oxford", "place", "ukmo-oxford", "height", "1200", "go", "2"}, {"place", "nowhere", "go", "5"},
	} {
		page := shown(t, h, first, http.StatusUnprocessableEntity, typed...)
		if page.one(t, "div", "role", "alert").words() == "" {
			t.Errorf("%v: nothing is said", typed)
		}
		if got := formTo(t, page, "/start").filled()["q"]; typed[0] == "q" && got != typed[1] {
			t.Errorf("%v: shown again as %q", typed, got)
		}
	}
	table := shown(t, h, first, http.StatusOK, "q", "oxford", "place", "ukmo-oxford", "go", "2")
	for _, typed := range [][]string{{"adults", "0", "children", "0"}, {"adults", "-1"}, {"adults", "many"}, {"children", "1e9"}} {
		shown(t, h, table, http.StatusUnprocessableEntity, append(typed, "go", "3")...)
	}
	ground := shown(t, h, table, http.StatusOK, "go", "3")
	for _, beds := range []string{"", "a lot", "9999 beds 1 x 1", "bed 0 x 4", "bed 0.001 x 4"} {
		shown(t, h, ground, http.StatusUnprocessableEntity, "beds", beds, "go", "4")
	}
	back := shown(t, h, ground, http.StatusOK, "beds", "nonsense", "go", "1")
	if formTo(t, back, "/start").filled()["beds"] != "nonsense" {
		t.Error("going back lost what was typed")
	}
	if _, err := office.Holding(); err == nil {
		t.Error("a holding was begun")
	}
}

func TestPlacesAreLookedUpByThemselves(t *testing.T) {
	h, _ := newcomer(t, words.English())
	w := ask(h, "GET", "/start/places?q=reykj", "")
	if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Reykjav") || strings.Contains(w.Body.String(), "<html") {
		t.Errorf("%d %s", w.Code, w.Body.String())
	}
}

func TestTheDemoCanBeLookedAt(t *testing.T) {
	h, office := newcomer(t, words.English())
	follow(t, h, post(t, h, formTo(t, open(t, h, "/start"), "/start/sample")))
	if stood, err := office.Holding(); err != nil || len(stood.Plantings) == 0 {
		t.Errorf("%v", err)
	}
}

// The first run too speaks the language of the catalogue alone.
func TestTheFirstRunComesFromTheCatalogue(t *testing.T) {
	h, _ := newcomer(t, words.Pseudo())
	page := open(t, h, "/start")
	pages := []*element{page}
	for _, typed := range [][]string{{"q", "oxford", "go", "1"}, {"go", "2"}, {"go", "3"},
		{"go", "4", "beds", "2 beds 6 x 1.2", "lines", "leeks bed 1, 42 left"}} {
		page = shown(t, h, page, http.StatusOK, typed...)
		pages = append(pages, page)
	}
	_, filled := garden(t, words.Pseudo())
	own := ownWords(t, filled, "united kingdom", "oxford", "bed", "united states", "mississippi", "ohio", "connecticut")
	for i, p := range pages {
		for _, text := range textsOf(p) {
			if stray := strayIn(text, own); stray != "" {
				t.Errorf("page %d: %q in %.100q", i, stray, text)
			}
		}
	}
}
