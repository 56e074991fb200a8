package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/words"
)

// Each vegetable that differs is told and drawn twice, and every figure is there.
func TestTwoPlansSideBySide(t *testing.T) {
	s, office := demo()
	v, err := office.CompareView("p2027", "fewer")
	if err != nil || len(v.Differs) == 0 {
		t.Fatal(v, err)
	}
	code, page := get(t, s, "/plans/compare?a=p2027&b=fewer")
	if code != http.StatusOK {
		t.Fatalf("status %d", code)
	}
	at := read(t, page)
	got := at.words()
	for _, p := range v.Lead {
		if said := words.English().Text(p); !strings.Contains(got, said) {
			t.Errorf("the page does not say %q", said)
		}
	}
	rows := at.all(func(e *element) bool { return e.attrs["class"] == "compare-row" })
	if len(rows) != len(v.Differs) {
		t.Errorf("%d vegetables are shown, %d differ", len(rows), len(v.Differs))
	}
	for i, row := range rows {
		if n := len(row.named("svg")); n != 2 {
			t.Errorf("%s has %d ribbons", v.Differs[i].Vegetable, n)
		}
	}
	if weeks := strings.Count(page, `<th scope="row">`) - len(v.Figures()); weeks != v.Weeks {
		t.Errorf("%d weeks are told of %d", weeks, v.Weeks)
	}
}

// Without names the plan in force is set beside the other one.
func TestTheOtherPlanIsSetBeside(t *testing.T) {
	s, _ := demo()
	code, page := get(t, s, "/plans/compare")
	if code != http.StatusOK || !strings.Contains(page, `<option value="p2027" selected>`) || !strings.Contains(page, `<option value="fewer" selected>`) {
		t.Errorf("status %d", code)
	}
}

func TestPlansThatAreNotThere(t *testing.T) {
	s, _ := demo()
	for _, name := range []string{"nothing", "fewr", "<b>", "../etc", "%"} {
		code, page := get(t, s, "/plans/compare?"+url.Values{"a": {name}, "b": {"fewer"}}.Encode())
		if code != http.StatusNotFound || !strings.Contains(page, `role="alert"`) {
			t.Errorf("%s: status %d", name, code)
		}
		read(t, page)
	}
}

func TestPlansAreListed(t *testing.T) {
	s, office := demo()
	v, err := office.PlansView()
	if err != nil || len(v.Plans) != 2 {
		t.Fatal(v, err)
	}
	_, page := get(t, s, "/plans")
	at := read(t, page)
	for _, p := range v.Plans {
		if !strings.Contains(at.words(), p.Name) {
			t.Errorf("%s is not listed", p.Name)
		}
	}
	if !strings.Contains(page, "/plans/compare?a=p2027&amp;b=fewer") {
		t.Error("there is no way to set them side by side")
	}
}
