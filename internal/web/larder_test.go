package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/desk"
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
	if kg := inLarder(t, office, "b-onion"); kg != 12.5 {
		t.Errorf("the larder tells %g kg, counted were 12.5", kg)
	}
	last := holding.Records[len(holding.Records)-1]
	if last.What != "counted" || last.Store != "rack" || last.Batch != "b-onion" || last.Value != 12.5 || last.Unit != "kg" || last.Date != holding.Today {
		t.Errorf("the count is recorded as %+v", last)
	}
	// The same form sent again writes nothing more.
	again := post(t, h, form, "kg", "12,5")
	if again.Code != http.StatusSeeOther {
		t.Errorf("the same count again got %d", again.Code)
	}
	if after, err := office.Holding(); err != nil || len(after.Records) != len(holding.Records) {
		t.Errorf("it is recorded twice (%v)", err)
	}
	follow(t, h, ask(h, "POST", "/undo", url.Values{"taken": {page.one(t, "input", "name", "taken").attrs["value"]}, "back": {"/larder"}}.Encode()))
	if kg := inLarder(t, office, "b-onion"); kg != 22 {
		t.Errorf("taken back, the larder tells %g kg", kg)
	}
}

// inLarder is what the larder tells of a batch, 0 when it tells of none.
func inLarder(t *testing.T, office *desk.Office, batch string) float64 {
	t.Helper()
	view, err := office.LarderView()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range view.Stocks {
		for _, b := range s.Batches {
			if b.ID == batch {
				return b.Kg
			}
		}
	}
	return 0
}

// A batch of which none is left is there no more, and its store holds the less.
func TestABatchThatIsGone(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, countForm(t, open(t, h, "/larder"), "b-garlic"), "left", "none"))
	if kg := inLarder(t, office, "b-garlic"); kg != 0 {
		t.Errorf("of none left the larder tells %g kg", kg)
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
	if w := post(t, h, countForm(t, page, "b-carrot"), "batch", "nowhere", "kg", "2"); w.Code != http.StatusUnprocessableEntity {
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
