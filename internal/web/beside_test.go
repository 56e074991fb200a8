package web

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// The page of a pair tells both, draws them, and offers what can be done; the
// planting's page leads to it, and that of a planting alone does not.
func TestBesidePage(t *testing.T) {
	s, _ := demo()
	status, page := get(t, s, "/planting/let-27e/beside")
	if status != http.StatusOK {
		t.Fatalf("status %d", status)
	}
	for _, want := range []string{"Hearting lettuce between Brussels sprouts", `class="leaf under"`, `aria-label="Leaf of`, "beds grown apart",
		`/planting/bru-27"`, "Take off lower leaves", "Clear the upper crop"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page has no %q", want)
		}
	}
	if _, planting := get(t, s, "/planting/let-27e"); !strings.Contains(planting, "/planting/let-27e/beside") {
		t.Error("the planting's page does not lead there")
	}
	if _, planting := get(t, s, "/planting/bru-27"); !strings.Contains(planting, "/planting/bru-27/beside") {
		t.Error("the upper's page does not lead there")
	}
	if _, planting := get(t, s, "/planting/pot-27m"); strings.Contains(planting, "/beside") {
		t.Error("the page of a planting alone leads there")
	}
	if status, alone := get(t, s, "/planting/pot-27m/beside"); status != http.StatusOK || !strings.Contains(alone, "Nothing stands under or between") {
		t.Errorf("alone: status %d", status)
	}
	if status, _ := get(t, s, "/planting/nobody/beside"); status != http.StatusNotFound {
		t.Errorf("nobody: status %d", status)
	}
}

// Without script: the link of an offer leads to the page with it tried, which
// can be kept.
func TestBesideTried(t *testing.T) {
	s, _ := demo()
	_, page := get(t, s, "/planting/let-27e/beside?strip=2027-06-25&share=30")
	m := regexp.MustCompile(`href="([^"]*strip_on[^"]*)"`).FindStringSubmatch(page)
	if m == nil {
		t.Fatal("nothing to try")
	}
	path := html.UnescapeString(m[1])
	for _, want := range []string{"bru-27:strip_on=2027-06-25", "bru-27:strip_share=0.3"} {
		if !strings.Contains(path, url.QueryEscape(want)) {
			t.Errorf("%s does not try %s", path, want)
		}
	}
	_, tried := get(t, s, path)
	for _, want := range []string{"Being tried, not yet kept", "lower leaves off on", `action="/try/keep"`} {
		if !strings.Contains(tried, want) {
			t.Errorf("tried, the page has no %q", want)
		}
	}
}

// A relation is declared by a form that leads to the page with it tried.
func TestBesideDeclared(t *testing.T) {
	s, _ := demo()
	w := ask(s.Handler(), http.MethodGet, "/planting/swe-27/beside?do=relate&relation=under&to=bru-27", "")
	if w.Code != http.StatusSeeOther {
		t.Fatalf("status %d", w.Code)
	}
	_, page := get(t, s, w.Header().Get("Location"))
	if !strings.Contains(page, "Swedes") || !strings.Contains(page, "under Brussels sprouts") {
		t.Error("the pair is not shown")
	}
	for path, want := range map[string]string{
		"/planting/swe-27/beside?do=relate&relation=under&to=":       "Choose the planting on whose ground it stands.",
		"/planting/let-27e/beside?strip=soon":                        "soon",
		"/planting/let-27e/beside?strip=2027-06-25&share=130":        "130 is no share",
		"/planting/let-27e/beside?do=relate&relation=over&to=bru-27": "over",
	} {
		if status, page := get(t, s, path); status != http.StatusUnprocessableEntity || !strings.Contains(html.UnescapeString(page), want) {
			t.Errorf("%s: status %d, no %q", path, status, want)
		}
	}
}

// A share of the leaf that is no number of percent is told, whatever it reads as.
func TestShareThatIsNoShareIsTold(t *testing.T) {
	s, _ := demo()
	for _, share := range []string{"NaN", "Inf", "0", "95", "half"} {
		if status, _ := get(t, s, "/planting/let-27e/beside?share="+share); status != http.StatusUnprocessableEntity {
			t.Errorf("%s: status %d", share, status)
		}
	}
}
