package web

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// The main path: the best crop for a space is told with its worth, tried, and
// accepted in one entry that can be taken back.
func TestWhatNextIsAccepted(t *testing.T) {
	h, office := garden(t, words.English())
	q := desk.AdviseQuery{Bed: "h9", From: cal.Of(2027, 3, 1), Until: cal.Of(2027, 8, 20), AreaM2: 1.5}
	view, err := office.AdviseView(q, nil)
	if err != nil || len(view.Candidates) < 5 {
		t.Fatal(view, err)
	}
	c := view.Candidates[0]
	page := open(t, h, "/beds/h9/next?from=2027-03-01&until=2027-08-20&area=1.5")
	got := page.words()
	for _, said := range []string{"1.5 m² free from", capital(c.Name), words.English().Text(c.Reason), "do most for the table", "To cover the ground"} {
		if !strings.Contains(got, said) {
			t.Errorf("the page does not say %q", said)
		}
	}
	before, err := office.Rows("plantings")
	if err != nil {
		t.Fatal(err)
	}
	next := follow(t, h, post(t, h, firstPost(t, page, "/beds/h9/next")))
	if said := next.one(t, "div", "class", "said").words(); !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	after, err := office.Rows("plantings")
	if err != nil || len(after) != len(before)+1 {
		t.Fatal(len(before), len(after), err)
	}
	row := after[len(after)-1]
	if row.ID != c.ID || row.Cells["date"] != c.Date.String() || row.Cells["area_m2"] != c.Cells["area_m2"] || row.Cells["clear_by"] != "2027-08-20" {
		t.Errorf("sown %v, told %v", row, c.Cells)
	}
	if got := next.words(); !strings.Contains(got, c.Name) && !strings.Contains(got, capital(c.Name)) {
		t.Errorf("the bed does not show it: %s", got)
	}
	follow(t, h, post(t, h, formTo(t, next, "/undo")))
	if back, err := office.Rows("plantings"); err != nil || len(back) != len(before) {
		t.Errorf("%d plantings after undoing, %d before", len(back), len(before))
	}
}

// firstPost is the first form that writes to a path.
func firstPost(t *testing.T, page *element, path string) *element {
	t.Helper()
	for _, f := range page.named("form") {
		if f.attrs["method"] == "post" && f.attrs["action"] == path {
			return f
		}
	}
	t.Fatalf("no form writes to %s", path)
	return nil
}

// Trying a candidate shows its vegetable with it and writes nothing.
func TestWhatNextIsTried(t *testing.T) {
	h, office := garden(t, words.English())
	view, err := office.AdviseView(desk.AdviseQuery{Bed: "h9", From: cal.Of(2027, 3, 1), Until: cal.Of(2027, 8, 20), AreaM2: 1.5}, nil)
	if err != nil {
		t.Fatal(err)
	}
	c := view.Candidates[0]
	page := open(t, h, "/beds/h9/next?from=2027-03-01&until=2027-08-20&area=1.5")
	path := ""
	for _, a := range page.named("a") {
		if strings.HasPrefix(a.words(), "Try it") {
			path = a.attrs["href"]
			break
		}
	}
	if tried := open(t, h, path).words(); !strings.Contains(tried, "Keep") {
		t.Errorf("%s: %s", path, tried)
	}
	if row, err := office.Row("plantings", c.ID); err == nil {
		t.Errorf("written: %v", row)
	}
}

// A standing planting tells whether to leave it, and can be given the day on which
// it is cleared.
func TestLeaveOrClearIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	view, err := office.KeepOrClearView("kal-26", nil)
	if err != nil {
		t.Fatal(err)
	}
	page := open(t, h, "/planting/kal-26")
	part := page.one(t, "section", "id", "keep")
	if got := part.words(); !strings.Contains(got, words.English().Text(view.Says)) || !strings.Contains(got, "The same in figures") {
		t.Errorf("%s", got)
	}
	kept, err := office.ClearBy(desk.Author{Entry: "clear-kal"}, "kal-26", cal.Of(2027, 2, 15), 1)
	if err != nil || kept == nil {
		t.Fatal(kept, err)
	}
	if row, err := office.Row("plantings", "kal-26"); err != nil || row.Cells["clear_by"] != "2027-02-15" {
		t.Errorf("%v, %v", row, err)
	}
	if got := open(t, h, "/planting/rhu-21").words(); strings.Contains(got, "Leave it or clear it") {
		t.Error("a perennial is to be cleared")
	}
}

// What an address asks wrongly is told, and the page stays.
func TestWhatNextTellsWhatIsWrong(t *testing.T) {
	h, office := garden(t, words.English())
	if _, err := office.KeepOrClearView("spi-26", nil); err != nil { // the table is worked out before the pages are asked
		t.Fatal(err)
	}
	for path, said := range map[string]string{
		"/beds/h9/next?from=soon":                        "soon is not a date",
		"/beds/h9/next?area=much":                        "much is not an area",
		"/beds/h9/next?from=2027-06-01&until=2027-05-01": "the end lies before the start",
		"/beds/h9/next?from=2031-06-01":                  "lies beyond it",
	} {
		if got := read(t, ask(h, "GET", path, "").Body.String()).words(); !strings.Contains(got, said) {
			t.Errorf("%s does not say %q: %s", path, said, got)
		}
	}
	if got := ask(h, "GET", "/beds/nowhere/next", ""); got.Code != 404 {
		t.Errorf("a bed that is not there: %d", got.Code)
	}
}

// A day to clear by, sent from a page that is older than the planting's row, is
// told as such and not written.
func TestClearingOverANewerRowIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	row, err := office.Row("plantings", "kal-26")
	if err != nil {
		t.Fatal(err)
	}
	old := url.Values{"base": {strconv.FormatInt(row.Version, 10)}, "clear_by": {"2027-02-15"}, "entry": {"clearearly"}}
	if w := ask(h, "POST", "/planting/kal-26/clear", old.Encode()); w.Code != http.StatusSeeOther {
		t.Fatalf("%d", w.Code)
	}
	old["clear_by"], old["entry"] = []string{"2027-03-01"}, []string{"clearlater"}
	w := ask(h, "POST", "/planting/kal-26/clear", old.Encode())
	if told := read(t, w.Body.String()).words(); w.Code != http.StatusConflict || !strings.Contains(told, "changed") {
		t.Errorf("%d: %s", w.Code, told)
	}
	if row, err := office.Row("plantings", "kal-26"); err != nil || row.Cells["clear_by"] != "2027-02-15" {
		t.Errorf("%v, %v", row, err)
	}
}
