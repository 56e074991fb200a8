package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// givenForm is the form in which the watering of a bed is told.
func givenForm(t *testing.T, page *element, bed string) *element {
	t.Helper()
	for _, form := range page.all(func(e *element) bool { return e.name == "form" && e.attrs["action"] == "/water/given" }) {
		if form.filled()["bed"] == bed {
			return form
		}
	}
	t.Fatalf("no form tells the watering of %s", bed)
	return nil
}

// A bed is watered by cans of the household's size, and the page tells it; a wrong amount
// is told at its field and nothing is kept.
func TestABedIsWatered(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, formTo(t, open(t, h, "/water"), "/water/can"), "can-can_l", "9"))
	page := open(t, h, "/water")
	if !strings.Contains(page.words(), "A can is 9.0 L") {
		t.Error("the can is not of 9 litres")
	}
	page = follow(t, h, post(t, h, givenForm(t, page, "t1"), "amount", "2,5", "unit", "cans"))
	if !strings.Contains(page.words(), "Last watered") {
		t.Error("the page does not tell it")
	}
	holding, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	r := holding.Records[len(holding.Records)-1]
	if r.What != "watered" || r.Bed != "t1" || r.Value != 22.5 || r.Unit != "L" || r.Date != holding.Today || holding.CanL != 9 {
		t.Errorf("recorded as %+v, can of %v L", r, holding.CanL)
	}
	follow(t, h, post(t, h, givenForm(t, page, "t2"), "amount", ""))
	if holding, _ = office.Holding(); holding.Records[len(holding.Records)-1].Unit != "" {
		t.Errorf("a watering without an amount is recorded as %+v", holding.Records[len(holding.Records)-1])
	}
	for _, wrong := range [][]string{{"amount", "plenty"}, {"amount", "0"}, {"amount", "9000", "unit", "L"}, {"date", "2031-01-01"}, {"date", "tomorrow"}} {
		if w := post(t, h, givenForm(t, page, "t3"), wrong...); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), `aria-invalid="true"`) {
			t.Errorf("%v got %d", wrong, w.Code)
		}
	}
	if after, _ := office.Holding(); len(after.Records) != len(holding.Records) {
		t.Error("something wrong was recorded")
	}
}

// A time away tells what to do before and the note leads back; days that cannot be are
// told at the form.
func TestAway(t *testing.T) {
	h, _ := garden(t, words.English())
	page := open(t, h, "/water/away?from=2027-01-10&to=2027-01-24")
	for _, told := range []string{"Away from 10 January to 24 January", "To pick", "Due while you are away", "First when you are back"} {
		if !strings.Contains(page.words(), told) {
			t.Errorf("%q is not told", told)
		}
	}
	page.one(t, "a", "href", "/water/away/note?from=2027-01-10&to=2027-01-24")
	note := open(t, h, "/water/away/note?from=2027-01-10&to=2027-01-24")
	for _, told := range []string{"For whoever looks after our garden", "Whom to ask", "What you saw", "poisonous"} {
		if !strings.Contains(note.words(), told) {
			t.Errorf("the note does not tell %q", told)
		}
	}
	for _, days := range []string{"from=2027-01-24&to=2027-01-10", "from=soon&to=2027-01-10", "from=2026-01-01&to=2026-01-10", "from=2027-01-10&to=2027-09-10"} {
		if w := ask(h, "GET", "/water/away?"+days, ""); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), `role="alert"`) {
			t.Errorf("%s got %d", days, w.Code)
		}
	}
}
