package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// The main path of a bed's ground: compost is recorded and no longer due, the bed
// is silenced and told again, a disease is recorded, and each is said with Undo.
func TestABedIsTended(t *testing.T) {
	h, _ := garden(t, words.English())
	page := open(t, h, "/beds/h10")
	if !strings.Contains(page.words(), "Compost is due") || !strings.Contains(page.words(), "next from 2030") {
		t.Errorf("%s", page.words())
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/beds/h10/soil"), "what", "composted", "soil-date", "2027-01-03", "soil-value", "2,5"))
	if got := page.words(); strings.Contains(got, "Compost is due") || !strings.Contains(got, "225") {
		t.Errorf("after composting: %s", got)
	}
	if said := page.one(t, "div", "class", "said").words(); !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/beds/h10/rotation")))
	if got := page.words(); !strings.Contains(got, "This bed keeps its crops") || strings.Contains(got, "next from 2030") {
		t.Errorf("silenced: %s", got)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/beds/h10/disease"), "disease-problem", "clubroot"))
	if got := page.words(); !strings.Contains(got, "Clubroot was seen here in 2027 and stays in the ground") {
		t.Errorf("disease: %s", got)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/beds/h10/rotation")))
	if got := page.words(); !strings.Contains(got, "Clubroot was seen here in 2027. It asks for seven years without its hosts") {
		t.Errorf("told again: %s", got)
	}
}

// What cannot be is said beside its field, and nothing typed is lost.
func TestWhatCannotBeIsSaidOnTheBed(t *testing.T) {
	h, _ := garden(t, words.English())
	for _, w := range []struct {
		form  string
		typed []string
		field string
	}{
		{"/beds/h10/soil", []string{"what", "limed", "soil-value", "plenty"}, "soil-value"},
		{"/beds/h10/soil", []string{"what", "limed", "soil-date", "someday"}, "soil-date"},
		{"/beds/h10/disease", []string{"disease-date", "2027-01-02"}, "disease-problem"},
		{"/covers/h10-fleece/off", []string{"off-h10-fleece-off", "2027-01-01"}, "off-h10-fleece-off"},
		{"/covers/h10-fleece/off", []string{"off-h10-fleece-off", "2028-04-10", "off-h10-fleece-on", "2028-04-01"}, "off-h10-fleece-on"},
		{"/covers/h10-fleece/off", []string{"off-h10-fleece-off", "soon"}, "off-h10-fleece-off"},
	} {
		w := w
		got := post(t, h, formTo(t, open(t, h, "/beds/h10"), w.form), w.typed...)
		if got.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s %v: %d", w.form, w.typed, got.Code)
			continue
		}
		page := read(t, got.Body.String())
		page.one(t, "div", "id", "f-"+w.field+"-wrong")
		for i := 0; i < len(w.typed); i += 2 {
			if name := w.typed[i]; name != "what" && formTo(t, page, w.form).filled()[name] != w.typed[i+1] {
				t.Errorf("%s: %q is lost", w.form, w.typed[i+1])
			}
		}
	}
	if got := ask(h, "POST", "/beds/h10/soil", "what=watered&soil-date=2027-01-01"); got.Code != http.StatusBadRequest && got.Code != http.StatusUnprocessableEntity {
		t.Errorf("another kind of record: %d", got.Code)
	}
}

func TestAFilmIsTakenOffOnTheBed(t *testing.T) {
	h, _ := garden(t, words.English())
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/beds/h1"), "/covers/h1-low/off"), "off-h1-low-off", "2027-04-10", "off-h1-low-on", "2027-04-20"))
	if got := page.words(); !strings.Contains(got, "off 10 April 2027") || !strings.Contains(got, "on 20 April 2027, off 10 May 2027") {
		t.Errorf("%s", got)
	}
	if said := page.one(t, "div", "class", "said").words(); !strings.Contains(said, "off on 10 April 2027, and on again on 20 April 2027") {
		t.Errorf("said %q", said)
	}
}

func TestCoversOwnedAreListedAddedAndCounted(t *testing.T) {
	h, _ := garden(t, words.English())
	if got := open(t, h, "/gear").words(); !strings.Contains(got, "There is enough") || !strings.Contains(got, "Row 3") {
		t.Errorf("%s", got)
	}
	form := formTo(t, open(t, h, "/gear/mesh/edit"), "/gear/mesh/edit")
	page := follow(t, h, post(t, h, form, "pieces", "1"))
	if got := page.words(); !strings.Contains(got, "From 12 July 2027, one piece of mesh is out and one more is wanted for Row 3.") {
		t.Errorf("%s", got)
	}
	page = follow(t, h, post(t, h, formTo(t, open(t, h, "/gear/new"), "/gear/new"), "kind", "mesh", "pieces", "1", "length_m", "16", "width_m", "2.6", "mesh_mm", "0.8", "name", "Fine mesh"))
	if got := page.words(); !strings.Contains(got, "There is enough") || !strings.Contains(got, "Fine mesh") {
		t.Errorf("%s", got)
	}
}

func TestSeedOnHandIsListedAndAdded(t *testing.T) {
	h, _ := garden(t, words.English())
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/onhand/new"), "/onhand/new"), "grown", "leek/", "form", "plants", "amount", "60", "unit", "plants", "since", "2026-12-20"))
	if got := page.words(); !strings.Contains(got, "60 plants") || !strings.Contains(got, "Leeks") || !strings.Contains(got, "Beetroots") {
		t.Errorf("%s", got)
	}
}

// Sides and holes of a cover, and what is known of a bed's soil, have fields.
func TestFormsAskForSidesAndSoil(t *testing.T) {
	h, _ := garden(t, words.English())
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/covers/h1-low/edit"), "/covers/h1-low/edit"), "sides", "open"))
	if !strings.Contains(page.words(), "open sides") {
		t.Errorf("%s", page.words())
	}
	follow(t, h, post(t, h, formTo(t, open(t, h, "/beds/hb/edit"), "/beds/hb/edit"), "texture", "clay", "ph", "6.2", "turn_round_d", "14"))
	if got := open(t, h, "/beds/hb").words(); !strings.Contains(got, "clay") || !strings.Contains(got, "6.2") {
		t.Errorf("%s", got)
	}
}
