package web

import (
	"strings"
	"testing"
	"time"

	"garner/internal/desk"
	"garner/internal/words"
)

// patient is longer than anything takes to be worked out.
const patient = 2 * time.Minute

// What no bed can grow is told with its reason at the want, at the member of a group and on the
// vegetable's page; what can be grown is not, and an odd want is told at its row.
func TestWantsThatNoBedCanGrowAreTold(t *testing.T) {
	office := emptyOffice(t)
	held, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	for i := range held.Beds {
		held.Beds[i].Light = 0.12
	}
	held.Covers, held.Features = nil, nil
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-01-04T08:00:00Z"}, held); err != nil {
		t.Fatal(err)
	}
	h := newServer(t, optionsOver(office, words.English()))
	if _, there, err := office.BarrenWithin(patient); err != nil || !there {
		t.Fatal(there, err)
	}
	rows := func() map[string]string {
		out := map[string]string{}
		for _, li := range open(t, h, "/wants").all(func(e *element) bool { return e.name == "li" }) {
			for _, what := range li.all(func(e *element) bool { return e.attrs["class"] == "what" }) {
				out[what.words()] = li.words()
			}
		}
		return out
	}
	const dark = "too dark for it"
	if got := rows(); !strings.Contains(got["Tomato"], dark) || strings.Contains(got["Lettuce"], dark) {
		t.Errorf("tomatoes: %q; lettuce: %q", got["Tomato"], got["Lettuce"])
	}
	if page := open(t, h, "/vegetable/tomato").words(); !strings.Contains(page, dark) {
		t.Errorf("the page says %q", page)
	}
	if page := open(t, h, "/vegetable/lettuce").words(); strings.Contains(page, dark) {
		t.Errorf("the page says %q", page)
	}
	form := formTo(t, open(t, h, "/wants/new"), "/wants/new")
	follow(t, h, post(t, h, form, "vegetable", "lettuce", "kg_per_week", "900"))
	if _, there, err := office.BarrenWithin(patient); err != nil || !there {
		t.Fatal(there, err)
	}
	found := false
	for _, said := range rows() {
		found = found || strings.Contains(said, "more than the 7 that one could eat")
	}
	if !found {
		t.Error("900 kg of lettuce a week are taken without a word")
	}
}
