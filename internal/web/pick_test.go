package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// From the planting to the pick, and from the pick to the store it went into.
func TestAPickGoesIntoAStore(t *testing.T) {
	h, office := garden(t, words.English())
	open(t, h, "/planting/kal-26").one(t, "a", "href", "/planting/kal-26/pick")
	form := formTo(t, open(t, h, "/planting/kal-26/pick"), "/planting/kal-26/pick")
	if f := form.filled(); f["date"] != "2027-01-04" || f["kg"] != "" {
		t.Errorf("the form begins with %v", f)
	}
	follow(t, h, post(t, h, form, "kg", "2", "store", "freezer", "stored_kg", "1,5"))
	rows, err := office.Rows("batches")
	if err != nil {
		t.Fatal(err)
	}
	if last := rows[len(rows)-1].Cells; last["kg"] != "1.5" || last["planting"] != "kal-26" || last["store"] != "freezer" {
		t.Errorf("the last batch is %v", last)
	}
	store := open(t, h, "/stores/freezer")
	store.one(t, "a", "href", "/planting/kal-26")
	if text := store.words(); !strings.Contains(text, "1.5 kg put in on 4 January 2027") {
		t.Errorf("the store: %s", text)
	}
	open(t, h, "/stores").one(t, "a", "href", "/stores/freezer")
}

// A count is told on the store's page and corrects what is shown there.
func TestACountIsTold(t *testing.T) {
	h, _ := garden(t, words.English())
	form := formTo(t, open(t, h, "/stores/sand"), "/stores/sand/count")
	page := follow(t, h, post(t, h, form, "batch", "b-carrot", "kg", "8"))
	if text := page.words(); !strings.Contains(text, "8 kg") || !strings.Contains(text, "4 January 2027") {
		t.Errorf("the store: %s", text)
	}
}

// Nonsense is told at its field, with what was typed, and nothing is written.
func TestNonsenseInAPickOrACountIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	before, _ := office.Entries(9)
	for _, c := range []struct{ at, to, field, typed string }{
		{"/planting/kal-26/pick", "/planting/kal-26/pick", "kg", "lots"}, {"/planting/kal-26/pick", "/planting/kal-26/pick", "kg", ""},
		{"/planting/kal-26/pick", "/planting/kal-26/pick", "date", "2027-02-01"},
		{"/stores/sand", "/stores/sand/count", "kg", ""}, {"/stores/sand", "/stores/sand/count", "kg", "NaN"}, {"/stores/sand", "/stores/sand/count", "date", "soon"},
	} {
		typed := []string{c.field, c.typed}
		if c.field != "kg" {
			typed = append(typed, "kg", "1")
		}
		w := post(t, h, formTo(t, open(t, h, c.at), c.to), typed...)
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s %s %q: %d", c.to, c.field, c.typed, w.Code)
			continue
		}
		page := read(t, w.Body.String())
		if wrong := page.all(func(e *element) bool { return e.attrs["id"] == "f-"+c.field+"-wrong" }); len(wrong) != 1 {
			t.Errorf("%s %s %q: %d messages", c.to, c.field, c.typed, len(wrong))
		}
		if got := formTo(t, page, c.to).filled()[c.field]; got != c.typed {
			t.Errorf("%s %s: %q was typed, %q is kept", c.to, c.field, c.typed, got)
		}
	}
	if w := ask(h, "GET", "/stores/nowhere", ""); w.Code != http.StatusNotFound {
		t.Errorf("a store that is not there: %d", w.Code)
	}
	if after, _ := office.Entries(9); len(after) != len(before) {
		t.Error("something was written")
	}
}
