package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// A sighting is told from the page, leads it, stands with its bed, and is taken back.
func TestASightingIsToldAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/risk")
	page.one(t, "a", "href", "/risk/sighting")
	bed := mustRows(t, office, "beds")[0]["id"]
	form := formTo(t, open(t, h, "/risk/sighting?problem=late-blight&bed="+bed), "/risk/sighting")
	if f := form.filled(); f["problem"] != "late-blight" || f["where"] != "bed/"+bed || f["date"] == "" {
		t.Errorf("the form begins with %v", f)
	}
	refused := post(t, h, form, "where", "", "share", "0.5", "count", "3")
	if refused.Code != http.StatusUnprocessableEntity || !strings.Contains(refused.Body.String(), "Choose the bed") {
		t.Errorf("without a place: %d", refused.Code)
	}
	page = follow(t, h, post(t, h, form, "share", "0.1", "stage", "damage", "note", "lower leaves"))
	if text := page.words(); !strings.Contains(text, "Late blight: seen in") || !strings.Contains(text, "10 % of the plants") {
		t.Errorf("the page: %.600s", text)
	}
	rows := mustRows(t, office, "records")
	if last := rows[len(rows)-1]; last["what"] != "sighted" || last["problem"] != "late-blight" || last["stage"] != "damage" || last["unit"] != "share" {
		t.Errorf("the record: %v", last)
	}
	if text := open(t, h, bedPath(bed)).words(); !strings.Contains(strings.ToLower(text), "late blight") {
		t.Error("the bed does not tell of it")
	}
	before := len(rows)
	follow(t, h, post(t, h, formTo(t, page, "/undo")))
	if now := len(mustRows(t, office, "records")); now != before-1 {
		t.Errorf("taken back there are %d records, before %d", now, before)
	}
}

// Hours with a wrong row are told and not kept, unless the good ones are asked for.
func TestHoursArePasted(t *testing.T) {
	h, office := garden(t, words.English())
	form := formTo(t, open(t, h, "/risk/hours"), "/risk/hours")
	text := "time,temp_c,rh_pct\n2026-06-01T00:00,14,92\n2026-06-01T01:00,140,92\n2026-06-01T02:00,14,93\n"
	refused := post(t, h, form, "hours", text)
	if refused.Code != http.StatusUnprocessableEntity || !strings.Contains(refused.Body.String(), "Row 3") {
		t.Errorf("with a wrong row: %d", refused.Code)
	}
	follow(t, h, post(t, h, form, "hours", text, "good", "yes"))
	if name := mustRows(t, office, "weather")[0]["hourly"]; name == "" {
		t.Error("no hours were kept")
	}
	now, err := office.Holding()
	if err != nil || len(now.Weather[0].Hours) != 3 {
		t.Errorf("%d hours, %v", len(now.Weather[0].Hours), err)
	}
}

// Each kind of rule has its page; one that is not there is not found.
func TestEveryKindOfRuleHasItsPage(t *testing.T) {
	h, _ := garden(t, words.English())
	for _, rule := range []string{"hutton", "wallin", "powdery-mildew", "grey-mould", "downcast", "carrot-fly", "leek-moth"} {
		page := open(t, h, rulePath(rule))
		if text := page.words(); !strings.Contains(text, "What growers do about it") || !strings.Contains(text, "follow its label and local law") {
			t.Errorf("%s: %.300s", rule, text)
		}
	}
}

// A disease or pest is one entry however many sites it is told of, with the sites named in
// it; those of which nothing is to be told are names in a line.
func TestRiskIsGatheredOverSites(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/risk")
	view, err := office.RiskView()
	if err != nil {
		t.Fatal(err)
	}
	problems, twice := map[string]int{}, 0
	for i := range view.Items {
		if problems[view.Items[i].Problem]++; problems[view.Items[i].Problem] == 2 {
			twice++
		}
	}
	entries := page.all(func(e *element) bool { return e.attrs["class"] == "risk-item" })
	names := page.all(func(e *element) bool { return e.name == "section" && e.attrs["class"] == "part risk-line" })
	listed := 0
	for _, line := range names {
		listed += len(line.all(func(e *element) bool { return e.name == "li" }))
	}
	if twice == 0 || len(entries) == 0 || len(entries)+listed != len(problems) {
		t.Errorf("%d entries and %d names for %d diseases and pests, %d of them at two sites", len(entries), listed, len(problems), twice)
	}
	for _, e := range entries {
		if text := e.words(); strings.HasPrefix(text, "Carrot fly") && (!strings.Contains(text, "Larkmeer house garden") || !strings.Contains(text, "Wilgenrik share")) {
			t.Errorf("the sites are not named: %s", text)
		}
	}
}
