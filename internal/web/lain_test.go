package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/words"
)

// What lies in a store already is told from the store's page, and is food of it; taken
// back, nothing of it is left.
func TestWhatLiesInAStoreAlready(t *testing.T) {
	h, office := garden(t, words.English())
	open(t, h, "/stores/rack").one(t, "a", "href", lainPath("rack"))
	open(t, h, "/larder").one(t, "a", "href", "/larder/already")
	before := len(mustRows(t, office, "batches"))
	form := formTo(t, open(t, h, lainPath("rack")), "/larder/already")
	if f := form.filled(); f["store"] != "rack" || f["stored"] != "" || f["unit"] != "kg" {
		t.Errorf("the form begins with %v", f)
	}
	page := follow(t, h, post(t, h, form, "grown", "onion/", "kg", "7,5", "stored", "2026-10-01"))
	if text := page.words(); !strings.Contains(text, "7.5 kg put in on 1 October 2026") {
		t.Errorf("the store: %s", text)
	}
	if said := page.one(t, "div", "class", "said").words(); !strings.Contains(said, "7.5 kg") || !strings.Contains(said, "Undo") {
		t.Errorf("said: %q", said)
	}
	rows := mustRows(t, office, "batches")
	last := rows[len(rows)-1]
	if last["kg"] != "7.5" || last["planting"] != "" || last["stored"] != "2026-10-01" || last["crop"] != "onion" {
		t.Errorf("the last batch is %v", last)
	}
	if kg := inLarder(t, office, last["id"]); kg < 7 || kg > 7.5 {
		t.Errorf("the larder tells %g kg of it", kg)
	}
	follow(t, h, post(t, h, formTo(t, page, "/undo")))
	if now := len(mustRows(t, office, "batches")); now != before {
		t.Errorf("taken back there are %d batches, before %d", now, before)
	}
}

func mustRows(t *testing.T, office *desk.Office, table string) []map[string]string {
	t.Helper()
	rows, err := office.Rows(table)
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range rows {
		out = append(out, r.Cells)
	}
	return out
}

// All that is wrong is told together, each beside its field, with what was typed.
func TestNonsenseThatLiesInAStore(t *testing.T) {
	h, office := garden(t, words.English())
	before := len(mustRows(t, office, "batches"))
	form := formTo(t, open(t, h, "/larder/already"), "/larder/already")
	page := read(t, post(t, h, form, "kg", "lots", "stored", "2028-01-01").Body.String())
	for _, field := range []string{"grown", "kg", "stored", "store"} {
		if wrong := page.all(func(e *element) bool { return e.attrs["id"] == "f-"+field+"-wrong" }); len(wrong) != 1 {
			t.Errorf("%s: %d messages", field, len(wrong))
		}
	}
	if f := formTo(t, page, "/larder/already").filled(); f["kg"] != "lots" || f["stored"] != "2028-01-01" {
		t.Errorf("kept of what was typed: %v", f)
	}
	w := post(t, h, form, "grown", "kale/leaf", "kg", "3", "stored", "2026-12-01", "store", "rack")
	if said := read(t, w.Body.String()).one(t, "div", "id", "f-store-wrong").words(); w.Code != http.StatusUnprocessableEntity || !strings.Contains(said, "Freezer") || !strings.Contains(said, "frozen") {
		t.Errorf("kale on the rack: %d %q", w.Code, said)
	}
	if now := len(mustRows(t, office, "batches")); now != before {
		t.Errorf("%d batches, before %d", now, before)
	}
}

// A count far above what was put in is asked about once, and believed with a tick.
func TestACountFarAbove(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/stores/sand"), "/stores/sand/count")
	w := post(t, h, form, "batch", "b-carrot", "kg", "200")
	page := read(t, w.Body.String())
	if said := page.one(t, "div", "id", "f-kg-wrong").words(); w.Code != http.StatusUnprocessableEntity || !strings.Contains(said, "200 kg") || !strings.Contains(said, "20 kg") {
		t.Fatalf("%d: %q", w.Code, said)
	}
	follow(t, h, post(t, h, formTo(t, page, "/stores/sand/count"), "sure", "yes"))
	if kg := inLarder(t, office, "b-carrot"); kg < 190 {
		t.Errorf("the larder tells %g kg", kg)
	}
	w = post(t, h, countForm(t, open(t, h, "/larder"), "b-onion"), "kg", "900")
	if w.Code != http.StatusUnprocessableEntity {
		t.Fatalf("on the larder's page: %d", w.Code)
	}
	follow(t, h, post(t, h, countForm(t, read(t, w.Body.String()), "b-onion"), "sure", "yes"))
	if kg := inLarder(t, office, "b-onion"); kg < 850 {
		t.Errorf("the larder tells %g kg", kg)
	}
}
