package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// waterPaths are the pages that hang on the weather.
var waterPaths = []string{"/water", "/water/use", "/water/butt", "/water/short", "/water/feed", "/water/away?from=2027-01-10&to=2027-01-17", "/water/away/note?from=2027-01-10&to=2027-01-17", "/week"}

// A site without weather is named on each page of water with the way to mend it, and the
// other site's beds are told all the same; where no site has any, the page says what is
// missing. None of them is a fault.
func TestASiteWithoutWeather(t *testing.T) {
	h, office := garden(t, words.English())
	clear := func(site string) {
		t.Helper()
		form := formTo(t, open(t, h, "/sites/"+site+"/edit"), "/sites/"+site+"/edit")
		if got := post(t, h, form, "weather", ""); got.Code != http.StatusSeeOther {
			t.Fatalf("%s: %d", site, got.Code)
		}
	}
	clear("share")
	for _, path := range waterPaths {
		page := open(t, h, path)
		if !strings.Contains(page.words(), "Wilgenrik share has no weather on file") {
			t.Errorf("%s does not tell what is missing", path)
		}
		if !strings.Contains(path, "note") {
			page.one(t, "a", "href", "/sites/share/edit#f-weather")
		}
	}
	if page := open(t, h, "/water").words(); !strings.Contains(page, "Home 3") || strings.Contains(page, "Row 1") {
		t.Error("the other site's beds are not told, or those without weather are")
	}
	clear("home")
	for _, path := range waterPaths {
		page := open(t, h, path)
		if !strings.Contains(page.words(), "Without weather no") {
			t.Errorf("%s does not say what is missing", path)
		}
		page.one(t, "a", "href", "/sites/home/edit#f-weather")
	}
	if now, err := office.Holding(); err != nil || now.Sites[0].Weather != "" {
		t.Errorf("%v, %v", now.Sites, err)
	}
}

// A household that has told nothing but its name is led to what is missing; none of the
// pages is a fault.
func TestWaterOfAHoldingWithoutASite(t *testing.T) {
	office := emptyOffice(t)
	sample, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-01-04T08:00:00Z"}, &holding.Holding{ID: sample.ID, Name: sample.Name, Zone: sample.Zone, Today: sample.Today, Eaters: 2}); err != nil {
		t.Fatal(err)
	}
	h := newServer(t, optionsOver(office, words.English()))
	for _, path := range waterPaths {
		page := open(t, h, path)
		if !strings.Contains(page.words(), "No site is told of yet") {
			t.Errorf("%s: %s", path, page.words())
		}
		page.one(t, "a", "href", "/sites/new")
	}
}

// A holding of which nothing is planted is told so, by no fault.
func TestWaterWithoutAPlan(t *testing.T) {
	office := emptyOffice(t)
	sample, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	bare := &holding.Holding{ID: sample.ID, Name: sample.Name, Zone: sample.Zone, Today: sample.Today, Eaters: 2, Sites: sample.Sites, Beds: sample.Beds, Weather: sample.Weather}
	for i := range bare.Beds {
		bare.Beds[i].Water = ""
	}
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-01-04T08:00:00Z"}, bare); err != nil {
		t.Fatal(err)
	}
	h := newServer(t, optionsOver(office, words.English()))
	for _, path := range waterPaths {
		open(t, h, path)
	}
	if page := open(t, h, "/water").words(); !strings.Contains(page, "Nothing is planted") {
		t.Error(page)
	}
}
