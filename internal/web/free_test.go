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

// Every piece of free ground that is worth a line is on the page, with the way to
// what could follow there.
func TestFreeGroundIsListed(t *testing.T) {
	s, office := demo()
	code, page := get(t, s, "/ground/free?from=2027-06-01&until=2027-06-30&site=home")
	if code != http.StatusOK {
		t.Fatalf("status %d", code)
	}
	at := read(t, page)
	v, err := office.SpaceView(desk.SpaceQuery{Site: "home", From: cal.Of(2027, 6, 1), Until: cal.Of(2027, 7, 1)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	links := map[string]bool{}
	for _, a := range at.named("a") {
		links[a.attrs["href"]] = true
	}
	listed := 0
	for _, f := range v.Free {
		if f.AreaM2 < sliverM2 || f.Days() < sliverDays {
			continue
		}
		listed++
		found := false
		for href := range links {
			found = found || strings.HasPrefix(href, "/beds/"+f.Bed+"/next?") && strings.Contains(href, "from="+f.From.P50.String()) && strings.Contains(href, "until="+f.Until.String())
		}
		if !found {
			t.Errorf("%s from %s has no line", f.Bed, f.From.P50)
		}
	}
	if listed == 0 {
		t.Fatal("the demo has nothing free in June")
	}
	if svg := strings.Count(page, `class="free-plan"`); svg != 1 {
		t.Errorf("%d plans of one site", svg)
	}
}

// A period that cannot be read is told, and the usual one shown.
func TestPeriodThatCannotBeRead(t *testing.T) {
	s, _ := demo()
	for _, query := range []string{"from=soon", "from=2027-06-01&until=2027-05-01", "until=2027-02-30"} {
		code, page := get(t, s, "/ground/free?"+query)
		if code != http.StatusUnprocessableEntity || !strings.Contains(page, `role="alert"`) {
			t.Errorf("%s: status %d", query, code)
		}
	}
	if code, _ := get(t, s, "/ground/free?from=1999-01-01&site=nowhere"); code != http.StatusOK {
		t.Errorf("a day gone by and a site that is not there: %d", code)
	}
}

// A bed made over-full is kept, and told at once: with what was saved, on the
// planting's page and on the page of free ground.
func TestOverFullBedIsToldAtOnce(t *testing.T) {
	h, _ := garden(t, words.English())
	form := formTo(t, open(t, h, "/plantings/let-27b/edit"), "/plantings/let-27b/edit")
	after := follow(t, h, post(t, h, form, "area_m2", "5"))
	const told = "hearting lettuce go in on 8 April 2027 before spinach to stand the winter are cleared"
	if said := after.one(t, "div", "class", "said").words(); !strings.Contains(said, told) {
		t.Errorf("after saving it says %q", said)
	}
	for _, path := range []string{"/planting/let-27b", "/ground/free"} {
		if text := open(t, h, path).words(); !strings.Contains(text, told) {
			t.Errorf("%s does not tell it", path)
		}
	}
	if text := open(t, h, "/planting/pot-27t").words(); strings.Contains(text, told) {
		t.Error("a planting of another bed tells it")
	}
}

// What could follow is asked with what is being tried, and for an area as the
// address takes it.
func TestFreeGroundLeadsOnWithWhatIsTried(t *testing.T) {
	s, _ := demo()
	const tried = "let-27b:area_m2=1"
	code, page := get(t, s, "/ground/free?from=2027-06-01&until=2027-06-30&site=home&try="+url.QueryEscape(tried))
	if code != http.StatusOK {
		t.Fatalf("status %d", code)
	}
	found := 0
	for _, a := range read(t, page).named("a") {
		at, err := url.Parse(a.attrs["href"])
		if err != nil || !strings.HasSuffix(at.Path, "/next") {
			continue
		}
		found++
		if at.Query().Get("try") != tried {
			t.Errorf("%s does not try it", at)
		}
		if m2, err := strconv.ParseFloat(at.Query().Get("area"), 64); err != nil || m2 < sliverM2 {
			t.Errorf("%s is of %v m2", at, m2)
		}
	}
	if found == 0 {
		t.Error("nothing leads on")
	}
}
