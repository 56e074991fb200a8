package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/words"
)

// The page shows all that clashes or went wrong with its ways out, writes nothing
// until it is kept, and what was kept can be taken back.
func TestNextYearIsShownKeptAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	view, err := office.CarryView(desk.CarryOptions{})
	if err != nil || len(view.Wrong) == 0 {
		t.Fatal(view, err)
	}
	at := open(t, h, "/plans/next")
	if n := len(at.all(func(e *element) bool { return e.attrs["class"] == "carry-wrong" })); n != len(view.Wrong) {
		t.Errorf("%d troubles are shown of %d", n, len(view.Wrong))
	}
	out := "/plans/next?leave=" + view.Wrong[0].Planting
	left := open(t, h, out)
	if !strings.Contains(left.words(), "Take in again") {
		t.Error("what is left out cannot be taken in again")
	}
	if plans, err := office.PlansView(); err != nil || len(plans.Plans) != 2 {
		t.Fatalf("looking has written: %+v, %v", plans, err)
	}
	next := follow(t, h, post(t, h, formTo(t, left, "/plans/next")))
	if said := next.one(t, "div", "class", "said").words(); !strings.Contains(said, "2028") || !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	plans, err := office.PlansView()
	if err != nil || len(plans.Plans) != 3 || plans.Plans[2].Base != "p2027" || plans.Plans[2].Sowings <= plans.Plans[0].Sowings {
		t.Fatalf("%+v, %v", plans, err)
	}
	follow(t, h, post(t, h, formTo(t, next, "/undo")))
	if plans, err := office.PlansView(); err != nil || len(plans.Plans) != 2 {
		t.Errorf("%+v, %v", plans, err)
	}
}

func TestADraftIsPutInForce(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, formTo(t, open(t, h, "/plans"), "/plans/force")))
	if plans, err := office.PlansView(); err != nil || plans.InForce != "fewer" {
		t.Errorf("%+v, %v", plans, err)
	}
}

func TestNextYearOfNonsense(t *testing.T) {
	s, _ := demo()
	for _, query := range []string{"leave=nothing", "into=swe-27", "into=swe-27:nowhere", "into=:", "leave=%3Cb%3E"} {
		code, page := get(t, s, "/plans/next?"+query)
		if code != http.StatusNotFound {
			t.Errorf("%s: status %d", query, code)
		}
		read(t, page)
	}
}
