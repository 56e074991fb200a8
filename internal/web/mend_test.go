package web

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/words"
)

// The main path: from a vegetable's gap to what would mend it, accepted in one entry
// and taken back.
func TestAGapIsMended(t *testing.T) {
	h, office := garden(t, words.English())
	view, err := office.MendView("leek", cal.Of(2028, 2, 28), nil)
	if err != nil || len(view.Lines) < 4 {
		t.Fatal(view, err)
	}
	path := ""
	for _, a := range open(t, h, "/vegetable/leek").named("a") {
		if a.attrs["class"] == "leave mend" {
			path = a.attrs["href"] // the last is that of 2028
		}
	}
	page := open(t, h, path)
	got := page.words()
	first := &view.Lines[0]
	for _, said := range []string{"Leeks are short from", words.English().Text(first.Title), "that lack are there then", "What always remains", "Buy what lacks", "Leave it", "Other gaps"} {
		if !strings.Contains(got, said) {
			t.Errorf("%s does not say %q", path, said)
		}
	}
	before, err := office.Rows("plantings")
	if err != nil {
		t.Fatal(err)
	}
	next := follow(t, h, post(t, h, firstPost(t, page, "/try/keep")))
	if said := next.one(t, "div", "class", "said").words(); !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	if row, err := office.Row("plantings", first.Planting); err != nil || row.Cells["bed"] != first.Bed || row.Cells["date"] != first.Date.String() {
		t.Errorf("%+v, %v; told %+v", row, err, first)
	}
	follow(t, h, post(t, h, formTo(t, next, "/undo")))
	if back, err := office.Rows("plantings"); err != nil || len(back) != len(before) {
		t.Errorf("%d plantings after undoing, %d before", len(back), len(before))
	}
}

// To leave a gap, and to buy what lacks, are one tap on the page too, and each is taken
// back.
func TestWhatRemainsIsDoneInOneTap(t *testing.T) {
	h, office := garden(t, words.English())
	for end, said := range map[string]string{"Leave it": "Left leek short", "Buy what lacks": "a week may be bought"} {
		if _, err := office.MendView("leek", cal.Of(2028, 2, 28), nil); err != nil { // worked out before the page is asked
			t.Fatal(err)
		}
		done := false
		for _, f := range open(t, h, "/vegetable/leek/mend?on=2028-02-28").named("form") {
			if !strings.Contains(f.words(), "Do this: "+end) {
				continue
			}
			next := follow(t, h, post(t, h, f))
			if got := next.one(t, "div", "class", "said").words(); !strings.Contains(got, said) {
				t.Errorf("%s: said %q", end, got)
			}
			follow(t, h, post(t, h, formTo(t, next, "/undo")))
			done = true
		}
		if !done {
			t.Errorf("%s: no form", end)
		}
	}
	if left, err := office.Rows("gaps_left"); err != nil || len(left) != 0 {
		t.Errorf("%d gaps are left after undoing, %v", len(left), err)
	}
}

// A sowing that could be smaller is tried with what takes its place, and kept alone.
func TestAGlutIsTrimmed(t *testing.T) {
	h, office := garden(t, words.English())
	view, err := office.TrimView("courgette", nil)
	if err != nil || len(view.Lines) == 0 {
		t.Fatal(view, err)
	}
	if got := open(t, h, "/vegetable/courgette"); !strings.Contains(got.words(), "Trim what goes over") {
		t.Error("the vegetable does not lead there")
	}
	page := open(t, h, "/vegetable/courgette/trim")
	for _, a := range page.named("a") {
		if strings.HasPrefix(a.words(), "Try it") {
			if tried := open(t, h, a.attrs["href"]).words(); !strings.Contains(tried, "Keep") {
				t.Errorf("not tried: %s", tried)
			}
			break
		}
	}
	for _, f := range page.named("form") {
		if strings.HasPrefix(f.words(), "Only make it smaller") {
			follow(t, h, post(t, h, f))
			break
		}
	}
	row, err := office.Row("plantings", view.Lines[0].Planting)
	if err != nil || row.Cells["area_m2"] != view.Lines[0].Try[0].Value {
		t.Errorf("%+v, %v", row, err)
	}
}

// What an address asks wrongly is told.
func TestMendingTellsWhatIsWrong(t *testing.T) {
	h, office := garden(t, words.English())
	if _, err := office.MendView("leek", cal.None, nil); err != nil { // the table is worked out before the pages are asked
		t.Fatal(err)
	}
	for path, want := range map[string]struct {
		code int
		said string
	}{
		"/vegetable/leek/mend?on=soon":  {422, "soon is not a date"},
		"/vegetable/melon/mend":         {404, "The table has no melons"},
		"/vegetable/melon/trim":         {404, "The table has no melons"},
		"/vegetable/leek/mend?try=none": {422, "none"},
	} {
		got := ask(h, "GET", path, "")
		if said := read(t, got.Body.String()).words(); got.Code != want.code || !strings.Contains(said, want.said) {
			t.Errorf("%s: %d %s", path, got.Code, said)
		}
	}
}
