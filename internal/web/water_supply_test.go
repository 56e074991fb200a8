package web

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"garner/internal/desk"
	"garner/internal/words"
)

// Each page of water is there, and says what it is about; what cannot be read is told
// at its field.
func TestPagesOfWater(t *testing.T) {
	h, _ := garden(t, words.English())
	for path, says := range map[string]string{
		"/water/use": "Water by month", "/water/butt": "How large a butt", "/water/butt?source=shed-butt&roof=40&covering=metal&holds=500": "enough",
		"/water/short?site=share&left=100&days=7": "ban on hoses", "/water/feed": "label and local rules come first", "/water_sources": "Yard tap", "/moisture_readings": "felt moist",
	} {
		got := ask(h, "GET", path, "")
		if got.Code != http.StatusOK || !strings.Contains(got.Body.String(), says) {
			t.Errorf("%s: %d, %q is not said", path, got.Code, says)
		}
	}
	for _, path := range []string{"/water/butt?roof=wide", "/water/short?left=some", "/water/short?days=0", "/water/short?days=400"} {
		if got := ask(h, "GET", path, ""); got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), "aria-invalid") {
			t.Errorf("%s: %d", path, got.Code)
		}
	}
	if got := ask(h, "GET", "/water/butt?source=pond", ""); got.Code != http.StatusNotFound {
		t.Errorf("no such butt: %d", got.Code)
	}
}

// The label's dose is kept and taken as none when blank; a reading that cannot be is
// refused at its field; one that can is kept at its bed.
func TestFeedAndReadingsAreKept(t *testing.T) {
	h, office := garden(t, words.English())
	form := open(t, h, "/water/feed").one(t, "form", "action", "/water/feed")
	post(t, h, form, "label-feed_ml_l", "7.5", "label-feed_g_m2", "70")
	if now, err := office.Holding(); err != nil || now.FeedMLL != 7.5 || now.FeedGM2 != 70 {
		t.Errorf("%v ml, %v g, %v", now.FeedMLL, now.FeedGM2, err)
	}
	form = open(t, h, "/water/feed").one(t, "form", "action", "/water/feed")
	if got := post(t, h, form, "label-feed_g_m2", "5000"); got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), "aria-invalid") {
		t.Errorf("5 kg to a square metre: %d", got.Code)
	}
	if got := ask(h, "POST", "/water/feed/given", "planting=nobody&entry=fed-nobody"); got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), "None of these is due") {
		t.Errorf("what is not due: %d", got.Code)
	}
	form = open(t, h, "/moisture_readings/new?bed=h1&date=2027-01-04").one(t, "form", "action", "/moisture_readings/new")
	if got := post(t, h, form, "way", "probe", "value", "90"); got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), "all pores are full") {
		t.Errorf("90 %%: %d", got.Code)
	}
	post(t, h, form, "way", "probe", "value", "21")
	now, err := office.Holding()
	if err != nil || len(now.Readings) != 2 || now.Readings[1].Value != 21 {
		t.Errorf("%+v, %v", now.Readings, err)
	}
	if page := ask(h, "GET", "/beds/h1", "").Body.String(); !strings.Contains(page, "21 % of the volume") {
		t.Error("the bed's page does not tell the reading")
	}
}

// What is to come takes a while the first time: what was given is told at once and the
// months to come later, to those without script too.
func TestWaterByMonthDoesNotWait(t *testing.T) {
	h, office := garden(t, words.English())
	cells := map[string]string{"date": "2026-12-30", "bed": "h1", "what": "watered", "value": "40", "unit": "L"}
	if _, err := office.Save(desk.Author{Entry: "watered"}, "records", "", cells, 0); err != nil {
		t.Fatal(err)
	}
	first := ask(h, "GET", "/water/use", "").Body.String()
	if !strings.Contains(first, "40 litres are recorded") {
		t.Error("what was given is not told at once")
	}
	for range 600 {
		page := ask(h, "GET", "/water/use", "").Body.String()
		if !strings.Contains(page, "stale-note") {
			if !strings.Contains(page, "The year ahead asks for") || !strings.Contains(page, "40 litres are recorded") {
				t.Error("the months to come are not told")
			}
			return
		}
		if strings.Contains(page, "The year ahead asks for") || !strings.Contains(page, `href="/water/use"`) {
			t.Error("what is not known is told, or there is no way to look again")
		}
		time.Sleep(100 * time.Millisecond)
	}
	t.Error("the months to come never came")
}
