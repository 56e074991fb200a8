package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/words"
)

// From the planting to the loss, the hole at the table, and back.
func TestALossIsToldAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	before, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	page := open(t, h, "/planting/lee-26")
	page.one(t, "a", "href", "/planting/lee-26/failing")
	page.one(t, "a", "href", "/planting/lee-26/move")
	page.one(t, "a", "href", "/planting/lee-26/lost")
	form := formTo(t, open(t, h, "/planting/lee-26/lost"), "/planting/lee-26/lost")
	if f := form.filled(); f["date"] != "2027-01-04" || f["share"] != "1" || f["why"] != "" {
		t.Errorf("the form begins with %v", f)
	}
	w := post(t, h, form, "why", "mice")
	hole := follow(t, h, w)
	if text := hole.words(); !strings.Contains(text, "Leek") || !strings.Contains(text, "short") || !strings.Contains(text, "of Home 2 can be sown") {
		t.Errorf("the hole: %s", text)
	}
	next := hole.all(func(e *element) bool { return strings.HasPrefix(e.attrs["href"], "/beds/h2/next?") })
	if len(next) != 1 {
		t.Fatalf("%d links to what could follow", len(next))
	}
	at, err := url.Parse(next[0].attrs["href"])
	if err != nil || at.Query().Get("area") != "5" || at.Query().Get("from") != "2027-01-09" {
		t.Errorf("what could follow is at %s", next[0].attrs["href"])
	}
	if links := open(t, h, "/planting/lee-26").all(func(e *element) bool { return strings.HasSuffix(e.attrs["href"], "/lost") }); len(links) != 0 {
		t.Error("what is lost can be lost again")
	}
	undo := hole.one(t, "form", "action", "/undo")
	// There is no hole any more, so it leads on to the planting.
	w = post(t, h, undo)
	w = ask(h, "GET", w.Header().Get("Location"), "")
	if at := w.Header().Get("Location"); !strings.HasPrefix(at, "/planting/lee-26?kept=") {
		t.Errorf("taken back it leads to %q", at)
	}
	follow(t, h, w).one(t, "a", "href", "/planting/lee-26/lost")
	after, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	for name := range before {
		if string(before[name]) != string(after[name]) {
			t.Errorf("taken back, %s is another", name)
		}
	}
}

// What was picked of a failing planting lies in a store, and what was kept is on
// hand.
func TestAFailingPlantingIsPickedAndKept(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/planting/kal-26/failing"), "/planting/kal-26/failing")
	follow(t, h, post(t, h, form, "share", "0.5", "why", "pigeons", "kg", "1,5", "store", "freezer", "plants_kept", "3"))
	for table, want := range map[string]string{"batches": "1.5", "onhand": "3"} {
		rows, err := office.Rows(table)
		if err != nil {
			t.Fatal(err)
		}
		last := rows[len(rows)-1].Cells
		if last["crop"] != "kale" || last["kg"]+last["amount"] != want {
			t.Errorf("%s: %v", table, last)
		}
	}
	page := open(t, h, "/planting/kal-26").words()
	if !strings.Contains(page, "50 % of it was lost on 4 January") && !strings.Contains(page, "50\u00a0% of it was lost") {
		t.Errorf("its page does not tell the loss: %s", page)
	}
}

// Lifted here, it stands there.
func TestAPlantingIsMoved(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/planting/win-26/move"), "/planting/win-26/move")
	if got := form.filled()["area_m2"]; got != "2.4" {
		t.Errorf("it takes %q", got)
	}
	follow(t, h, post(t, h, form, "bed", "h1", "area_m2", "2"))
	rows, err := office.Rows("plantings")
	if err != nil {
		t.Fatal(err)
	}
	if last := rows[len(rows)-1].Cells; last["to"] != "win-26" || last["relation"] != "moved" || last["bed"] != "h1" {
		t.Errorf("the last planting is %v", last)
	}
	if text := open(t, h, "/planting/par-26/move").words(); !strings.Contains(text, "sown where it grows") {
		t.Error("nobody warns of moving parsnips")
	}
	if text := open(t, h, "/planting/lee-26/move").words(); strings.Contains(text, "sown where it grows") {
		t.Error("leeks are warned of")
	}
}

// Nonsense is told at its field, with what was typed, and nothing is written.
func TestNonsenseInALossIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	before, _ := office.Entries(9)
	for _, c := range []struct{ path, field, typed string }{
		{"lost", "date", "soon"}, {"lost", "date", "2027-02-01"}, {"lost", "plants", "many"}, {"lost", "plants", "-3"},
		{"failing", "kg", "NaN"}, {"failing", "plants_kept", "-1"}, {"move", "area_m2", "400"}, {"move", "area_m2", ""},
	} {
		path := "/planting/kal-26/" + c.path
		form := formTo(t, open(t, h, path), path)
		typed := []string{c.field, c.typed}
		if c.path == "move" {
			typed = append(typed, "bed", "h1")
		}
		w := post(t, h, form, typed...)
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s %s %q: %d", c.path, c.field, c.typed, w.Code)
			continue
		}
		page := read(t, w.Body.String())
		if wrong := page.all(func(e *element) bool { return e.attrs["id"] == "f-"+c.field+"-wrong" }); len(wrong) != 1 {
			t.Errorf("%s %s %q: %d messages", c.path, c.field, c.typed, len(wrong))
		}
		if got := formTo(t, page, path).filled()[c.field]; got != c.typed {
			t.Errorf("%s %s: %q was typed, %q is kept", c.path, c.field, c.typed, got)
		}
	}
	if w := ask(h, "GET", "/planting/nobody/lost", ""); w.Code != http.StatusNotFound {
		t.Errorf("a planting that is not there: %d", w.Code)
	}
	if w := ask(h, "GET", "/planting/kal-26/hole?entry=none", ""); w.Code != http.StatusNotFound {
		t.Errorf("the hole of no entry: %d", w.Code)
	}
	if after, _ := office.Entries(9); len(after) != len(before) {
		t.Error("something was written")
	}
}
