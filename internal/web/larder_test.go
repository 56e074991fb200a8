package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/words"
)

// countForm is the form in which a batch is counted.
func countForm(t *testing.T, page *element, batch string) *element {
	t.Helper()
	for _, form := range page.all(func(e *element) bool { return e.name == "form" && e.attrs["action"] == "/larder/count" }) {
		if form.filled()["batch"] == batch {
			return form
		}
	}
	t.Fatalf("no form counts %s", batch)
	return nil
}

func TestABatchIsCountedAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	form := countForm(t, open(t, h, "/larder"), "b-onion")
	sent := post(t, h, form, "kg", "12,5")
	page := follow(t, h, sent)
	if said := page.one(t, "div", "class", "said").words(); !strings.Contains(said, "12.5") {
		t.Errorf("after counting: %q", said)
	}
	holding, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range holding.Batches {
		if b.ID == "b-onion" && b.Kg != 12.5 {
			t.Errorf("the batch holds %g kg, counted were 12.5", b.Kg)
		}
	}
	// The rack holds 8 kg of the other onions and 3 kg of garlic beside.
	last := holding.Records[len(holding.Records)-1]
	if last.What != "counted" || last.Store != "rack" || last.Value != 23.5 || last.Unit != "kg" || last.Date != holding.Today {
		t.Errorf("the count is recorded as %+v", last)
	}
	// The same form sent again writes nothing more; one over what changed since is
	// a conflict.
	again := post(t, h, form, "kg", "12,5")
	if again.Code != http.StatusSeeOther {
		t.Errorf("the same count again got %d", again.Code)
	}
	if w := post(t, h, form, "kg", "11", "entry", "anotherentry"); w.Code != http.StatusConflict {
		t.Errorf("a count over what changed since got %d", w.Code)
	}
	follow(t, h, ask(h, "POST", "/undo", url.Values{"taken": {page.one(t, "input", "name", "taken").attrs["value"]}, "back": {"/larder"}}.Encode()))
	if holding, err = office.Holding(); err != nil {
		t.Fatal(err)
	}
	for _, b := range holding.Batches {
		if b.ID == "b-onion" && b.Kg != 22 {
			t.Errorf("taken back, the batch holds %g kg", b.Kg)
		}
	}
}

// A batch of which none is left is there no more, and its store holds the less.
func TestABatchThatIsGone(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, countForm(t, open(t, h, "/larder"), "b-garlic"), "left", "none"))
	view, err := office.LarderView()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range view.Stocks {
		for _, b := range s.Batches {
			if b.ID == "b-garlic" {
				t.Errorf("of none left the larder tells %g kg", b.Kg)
			}
		}
	}
	holding, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if last := holding.Records[len(holding.Records)-1]; last.Store != "rack" || last.Value != 30 {
		t.Errorf("the count is recorded as %+v", last)
	}
}

func TestNonsenseInACountIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	before, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	page := open(t, h, "/larder")
	for _, given := range []string{"", "much", "-2", "NaN", "1e9"} {
		w := post(t, h, countForm(t, page, "b-carrot"), "kg", given)
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%q got %d", given, w.Code)
			continue
		}
		wrong := read(t, w.Body.String())
		if input := wrong.one(t, "input", "id", "count-b-carrot"); input.attrs["value"] != given || input.attrs["aria-invalid"] != "true" {
			t.Errorf("%q is not shown beside its field: %v", given, input.attrs)
		}
	}
	if w := post(t, h, countForm(t, page, "b-carrot"), "batch", "nowhere", "kg", "2"); w.Code != http.StatusNotFound {
		t.Errorf("a batch that is none got %d", w.Code)
	}
	after, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	if len(after.Records) != len(before.Records) {
		t.Error("nonsense was recorded")
	}
}

// The list to give away has what the larder lists.
func TestTheListToGiveAway(t *testing.T) {
	h, _ := garden(t, words.English())
	list := open(t, h, "/larder/give").one(t, "table", "class", "data give-list").words()
	if on := open(t, h, "/larder").one(t, "table", "class", "data give-list").words(); on != list || !strings.Contains(list, "Cabbages") {
		t.Errorf("the larder lists %q, the list by itself %q", on, list)
	}
}
