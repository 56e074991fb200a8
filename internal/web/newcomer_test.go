package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// beginning is a server over a holding as files may have it: ground and weather, and
// what change leaves of the rest.
func beginning(t *testing.T, change func(h *holding.Holding)) (http.Handler, *desk.Office) {
	t.Helper()
	h, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	h.Plan, h.Plans, h.Plantings, h.Changes, h.Records = "", nil, nil, nil, nil
	h.Wants, h.Stores, h.Batches, h.GapsLeft, h.Groups, h.Members, h.Visits = nil, nil, nil, nil, nil, nil, nil
	change(h)
	office := emptyOffice(t)
	if err := office.Begin(desk.Author{Who: "Ottilie", Entry: "begin", At: "2027-01-04T09:00:00Z"}, h); err != nil {
		t.Fatal(err)
	}
	return newServer(t, optionsOver(office, words.English())), office
}

// Every page of a household that has told nothing yet is there, and leads on.
func TestNothingIsToldYet(t *testing.T) {
	h, _ := beginning(t, func(*holding.Holding) {})
	for path, next := range map[string]string{"/": "/wants", "/wants": "/wants/new", "/larder": "/stores/new", "/larder/give": "/larder", "/stores": "/stores/new",
		"/plans": "/draft", "/plans/compare": "/plans/next", "/plans/next": "/plantings/new", "/plantings": "/plantings/new", "/draft": "/wants"} {
		w := ask(h, "GET", path, "")
		if w.Code != http.StatusOK {
			t.Errorf("%s: %d %s", path, w.Code, read(t, w.Body.String()).one(t, "main").words())
			continue
		}
		if main := w.Body.String(); !strings.Contains(main, `href="`+next+`"`) {
			t.Errorf("%s does not lead to %s", path, next)
		}
	}
}

// A holding that has no plan gets one with its first planting, in the same entry.
func TestTheFirstPlantingMakesThePlan(t *testing.T) {
	h, office := beginning(t, func(*holding.Holding) {})
	form := formTo(t, open(t, h, "/plantings/new"), "/plantings/new")
	page := follow(t, h, post(t, h, form, "grown", "leek/winter", "bed", firstBed(t, office), "date", "2027-01-10", "area_m2", "1"))
	stood, err := office.Holding()
	if err != nil || len(stood.Plantings) != 1 || stood.Plan == "" || stood.Plantings[0].Plan != stood.Plan {
		t.Fatalf("%v, plan %q, plantings %+v", err, stood.Plan, stood.Plantings)
	}
	if plans, err := office.Rows("plans"); err != nil || len(plans) != 1 {
		t.Errorf("%d plans are written, %v", len(plans), err)
	}
	follow(t, h, post(t, h, formTo(t, page, "/undo")))
	if plans, err := office.Rows("plans"); err != nil || len(plans) != 0 {
		t.Errorf("%d plans after undoing, %v", len(plans), err)
	}
}

func firstBed(t *testing.T, office *desk.Office) string {
	t.Helper()
	stood, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	return stood.Beds[0].ID
}

// While nothing is planted, the table says so and leads to what can be done.
func TestATableOfWantsAlone(t *testing.T) {
	h, _ := beginning(t, func(h *holding.Holding) {
		south, err := desk.Sample("south")
		if err != nil {
			t.Fatal(err)
		}
		h.Wants = south.Wants
	})
	body := ask(h, "GET", "/", "").Body.String()
	for _, want := range []string{"Nothing is planted or meant to be", `href="/plantings/new"`, `href="/draft"`} {
		if !strings.Contains(body, want) {
			t.Errorf("the table does not have %q: %.300s", want, read(t, body).one(t, "main").words())
		}
	}
}

// A day that no year has is shown again as it was typed.
func TestADayThatIsNone(t *testing.T) {
	h, _ := beginning(t, func(*holding.Holding) {})
	form := formTo(t, open(t, h, "/wants/new"), "/wants/new")
	w := post(t, h, form, "vegetable", "kale", "kg_per_week", "0.2", "from", "31 February", "to", "1 May")
	if w.Code != http.StatusUnprocessableEntity || formTo(t, read(t, w.Body.String()), "/wants/new").filled()["from"] != "31 February" {
		t.Errorf("%d, shown again as %q", w.Code, formTo(t, read(t, w.Body.String()), "/wants/new").filled()["from"])
	}
}

// A new want begins with nothing chosen, and only says that a group is given where there
// are groups; every page leads to the plans; a draft names crops by their own names.
func TestFirstFormsSpeakOfWhatThereIs(t *testing.T) {
	first := func(h http.Handler) string {
		t.Helper()
		form := formTo(t, open(t, h, "/wants/new"), "/wants/new")
		return form.one(t, "select", "name", "vegetable").all(func(e *element) bool { return e.name == "option" })[0].words()
	}
	h, _ := beginning(t, func(*holding.Holding) {})
	if got := first(h); strings.Contains(got, "group") || got == "" {
		t.Errorf("without groups the list begins with %q", got)
	}
	full, office := garden(t, words.English())
	for i, cells := range []map[string]string{{"id": "roots", "name": "roots"}, {"group": "roots", "vegetable": "carrot", "preference": "1"}} {
		if _, err := office.Save(desk.Author{Entry: "row " + string(rune('a'+i))}, []string{"groups", "members"}[i], "", cells, 0); err != nil {
			t.Fatal(err)
		}
	}
	if got := first(full); !strings.Contains(got, "group") {
		t.Errorf("with groups it begins with %q", got)
	}
	at := open(t, full, "/draft")
	if here := at.one(t, "nav", "class", "pages").one(t, "a", "href", "/plans"); here.attrs["aria-current"] != "page" {
		t.Error("a drafted year is not among the plans")
	}
	carrots := at.all(func(e *element) bool { return e.name == "option" && e.attrs["value"] == "carrot" })
	if len(carrots) == 0 || carrots[0].words() != "Carrot" {
		t.Errorf("the draft lists carrots as %v", carrots)
	}
}

// Each page without a name in its address is there for households that lack what the
// others have: a plan, weather, beds. Where nothing can be told, it says what is missing.
func TestWhatHouseholdsLack(t *testing.T) {
	patterns, _ := asked(t)
	for name, without := range map[string]func(h *holding.Holding){
		"a plan":  func(*holding.Holding) {},
		"weather": withoutWeather,
		"beds": func(h *holding.Holding) {
			h.Beds, h.Covers, h.Features, h.OnHand, h.Gear = nil, nil, nil, nil, nil
		},
	} {
		h, _ := beginning(t, without)
		for _, p := range patterns {
			path := strings.TrimPrefix(p, "GET ")
			if strings.Contains(path, "{") && path != "/{$}" || notPages[p] != "" && p != "GET /week.ics" {
				continue
			}
			if strings.HasPrefix(path, "/water/away") {
				path += "?from=2027-01-10&to=2027-01-24"
			}
			w := ask(h, "GET", strings.TrimSuffix(path, "{$}"), "")
			want := http.StatusOK
			if name == "weather" && path == "/week.ics" { // a phone keeps the calendar it has
				want = http.StatusUnprocessableEntity
			}
			if w.Code != want {
				t.Errorf("without %s %s got %d: %s", name, path, w.Code, read(t, w.Body.String()).words())
			}
		}
	}
}

// withoutWeather takes the weather from a holding and from the sites that have it.
func withoutWeather(h *holding.Holding) {
	h.Weather = nil
	for i := range h.Sites {
		h.Sites[i].Weather = ""
	}
}

// Where a site has no weather every page of the holding, those with a name in their
// address too, is there or says so, with the way to the site's form; so does a form
// that is sent.
func TestEveryPageOfASiteWithoutWeather(t *testing.T) {
	h, office := garden(t, words.English())
	pages := pagesOf(t, h, office)
	stood := map[string]int{}
	for _, path := range pages {
		stood[path] = ask(h, "GET", path, "").Code
	}
	for _, site := range []string{"share", "home"} {
		form := formTo(t, open(t, h, "/sites/"+site+"/edit"), "/sites/"+site+"/edit")
		if got := post(t, h, form, "weather", ""); got.Code != http.StatusSeeOther {
			t.Fatalf("%s: %d", site, got.Code)
		}
		untold := 0
		for _, path := range pages {
			w := ask(h, "GET", path, "")
			body := w.Body.String()
			says := strings.Contains(body, "has no weather on file")
			if says {
				untold++
			}
			if says && !strings.Contains(body, `/edit#f-weather"`) && !strings.Contains(path, "note") {
				t.Errorf("%s does not lead to the site's form", path)
			}
			if w.Code != http.StatusOK && w.Code != stood[path] && !strings.HasPrefix(path, "/water/short?site=") { // that site is left out
				t.Errorf("without weather at %s %s got %d, with it %d", site, path, w.Code, stood[path])
			}
			if strings.Contains(body, "nothing can be forecast there") && !strings.HasPrefix(path, "/ground/light") { // the light is told all the same
				t.Errorf("without weather at %s %s has the bare fault", site, path)
			}
		}
		if untold < 20 {
			t.Errorf("only %d pages say what is missing", untold)
		}
	}
	page := open(t, h, "/")
	page.one(t, "a", "href", "/sites/home/edit#f-weather")
	page.one(t, "a", "href", "/sites/share/edit#f-weather")
}
