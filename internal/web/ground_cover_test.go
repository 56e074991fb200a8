package web

import (
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// A green manure is told among the plantings by when it covers the ground, and
// leads to no row of the table.
func TestGreenManureAmongThePlantings(t *testing.T) {
	today := cal.Of(2027, 9, 10)
	ready := desk.Odds{P10: today + 20, P50: today + 25, P90: today + 31}
	rye := desk.GroundLine{ID: "p1", Name: "winter rye", Vegetable: "green manure", Date: today - 5, State: desk.Standing, Ready: ready}
	kale := desk.GroundLine{ID: "p2", Name: "kale", Vegetable: "kale", Feeds: true, Date: today - 5, State: desk.Standing, Ready: ready}
	body := plantingsBody{Today: today, Forecast: true}
	if next := body.Next(rye); next == nil || next.Key != "web.covers_about" {
		t.Errorf("rye: %v", next)
	}
	if next := body.Next(kale); next == nil || next.Key != "web.ready_about" {
		t.Errorf("kale: %v", next)
	}
	for _, g := range grouped([]desk.GroundLine{rye, kale}, "vegetable") {
		if linked := g.Link != ""; linked != g.Lines[0].Feeds {
			t.Errorf("%s leads to %q", g.Name, g.Link)
		}
	}
}

func TestGreenManureIsNoVegetableToWant(t *testing.T) {
	wanted, err := vegetableChoices(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range wanted {
		if o.Name == "Green manure" {
			t.Error("green manure can be wanted at the table")
		}
	}
}

// A green manure that is added has a page of its own, which tells no yield.
func TestGreenManureHasAPage(t *testing.T) {
	h, _ := garden(t, words.English())
	form := formTo(t, open(t, h, "/plantings/new?bed=h4"), "/plantings/new")
	page := follow(t, h, post(t, h, form, "grown", "winter-rye/cover", "date", "2027-09-12", "area_m2", "1"))
	line := page.all(func(e *element) bool {
		return strings.Contains(e.attrs["data-find"], "rye") && strings.HasPrefix(e.attrs["class"], "line ")
	})
	if len(line) != 1 {
		t.Fatalf("%d lines for the rye", len(line))
	}
	own := open(t, h, line[0].one(t, "p", "class", "what").one(t, "a").attrs["href"])
	if said := own.words(); !strings.Contains(said, "Green manure") || strings.Contains(said, words.English().Text(words.P("web.planting_yield", nil))) {
		t.Errorf("the page of the rye says %.600q", said)
	}
}
