package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/place"
	"garner/internal/words"
)

// The page's figures are those of the command line, to the last digit shown, and
// its map and its curves tell the same in text.
func TestLightPageTellsWhatTheDeskComputes(t *testing.T) {
	s, office := demo()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	light := map[string][12]float64{}
	for _, b := range desk.Light(h).Beds {
		light[b.Bed] = b.Light
	}
	code, html := get(t, s, "/ground/light?site=home&month=12")
	if code != http.StatusOK {
		t.Fatalf("%d: %s", code, html)
	}
	page, f := read(t, html), s.words.Format()
	rows := page.one(t, "table", "class", "data figures light-twin").one(t, "tbody").named("tr")
	beds := 0
	for _, b := range h.Beds {
		if b.Site != "home" {
			continue
		}
		for _, r := range rows {
			if r.one(t, "th").words() != b.Name {
				continue
			}
			beds++
			for m, cell := range r.named("td")[:12] {
				if cell.words() != strings.Join(strings.Fields(f.Percent(light[b.ID][m])), " ") {
					t.Errorf("%s, month %d: %q on the page, computed %v", b.ID, m+1, cell.words(), light[b.ID][m])
				}
			}
		}
	}
	if beds != 17 || len(rows) != 17 {
		t.Errorf("%d beds in %d rows", beds, len(rows))
	}
	labels := 0
	for _, e := range page.named("svg") {
		if l := e.attrs["aria-label"]; strings.Contains(l, "December") && (e.attrs["class"] == "light-curve" || e.attrs["class"] == "light-map") {
			labels++
		}
	}
	if labels != beds+2 { // the map is drawn twice, for desk and phone
		t.Errorf("%d drawings tell December in text", labels)
	}
	if said := page.words(); !strings.Contains(said, "Beech hedge takes 9") || !strings.Contains(said, "Wall border") {
		t.Errorf("the page says %.900q", said)
	}
}

// Months and sites are links that lead there; what is asked wrongly is told.
func TestLightPageLinks(t *testing.T) {
	s, _ := demo()
	_, html := get(t, s, "/ground/light")
	page := read(t, html)
	months := page.one(t, "nav", "class", "light-months noprint").named("a")
	if len(months) != 12 || months[0].attrs["aria-current"] != "page" { // the demo's today is in January
		t.Fatalf("%d months, %v", len(months), months[0].attrs)
	}
	for _, a := range months {
		if code, there := get(t, s, a.attrs["href"]); code != http.StatusOK || !strings.Contains(there, "<h2>"+a.words()+"</h2>") {
			t.Errorf("%s: %d", a.attrs["href"], code)
		}
	}
	for path, want := range map[string]int{"/ground/light?month=13": http.StatusUnprocessableEntity, "/ground/light?month=x": http.StatusUnprocessableEntity, "/ground/light?site=moon": http.StatusNotFound} {
		if code, _ := get(t, s, path); code != want {
			t.Errorf("%s: %d, want %d", path, code, want)
		}
	}
}

// A site that is not drawn, a wall without a height and a bed that is not drawn
// are each told, and the page stands.
func TestLightPageWithoutAPlan(t *testing.T) {
	h, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	h.Features[0].HeightM = 0
	h.Beds[0].At = place.Spot{}
	s, _ := serverOver(h, words.English())
	code, html := get(t, s, "/ground/light")
	if said := read(t, html).words(); code != http.StatusOK || !strings.Contains(said, "Gum has no height") || !strings.Contains(said, "Not drawn on the plan, so no shade is worked out: Top terrace") {
		t.Errorf("%d: %.600q", code, said)
	}
	h.Sites[0].PlanWidthM, h.Sites[0].PlanDepthM = 0, 0
	for i := range h.Beds {
		h.Beds[i].At = place.Spot{}
	}
	s, _ = serverOver(h, words.English())
	code, html = get(t, s, "/ground/light")
	if said := read(t, html).words(); code != http.StatusOK || !strings.Contains(said, "is not drawn yet") {
		t.Errorf("%d: %.600q", code, said)
	}
}

// What the air asks stands on the page of the light as the command line has it,
// and on the bed's own page for the month in which it asks most.
func TestLightPageTellsWhatTheAirAsks(t *testing.T) {
	s, office := demo()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	told, err := desk.Shade(h)
	if err != nil {
		t.Fatal(err)
	}
	water := map[string]*desk.BedWater{}
	for _, b := range told.Beds {
		water[b.Bed] = b.Water
	}
	_, html := get(t, s, "/ground/light?site=home&month=7")
	f, rows := s.words.Format(), read(t, html).one(t, "table", "class", "data figures light-water").one(t, "tbody").named("tr")
	beds := 0
	for _, b := range h.Beds {
		for _, r := range rows {
			if r.one(t, "th").words() != b.Name || b.Site != "home" {
				continue
			}
			beds++
			w, cells := water[b.ID], r.named("td")
			for i, want := range []string{f.Number(w.WeekL[6]/b.AreaM2(), 0), f.Number(w.WeekL[6], 0), f.Number(w.OpenL[6], 0), f.Percent(w.Spared(7))} {
				if cells[i].words() != strings.Join(strings.Fields(want), " ") {
					t.Errorf("%s, column %d: %q on the page, computed %q", b.Name, i, cells[i].words(), want)
				}
			}
		}
	}
	if beds != 17 || len(rows) != 17 {
		t.Errorf("%d beds in %d rows", beds, len(rows))
	}
	wall := water["hb"]
	_, html = get(t, s, "/beds/hb")
	want := "In " + f.Month(wall.Peak()) + " the air asks " + f.Number(wall.WeekL[wall.Peak()-1], 0) + " litres a week of it in its light; in full light it would ask " + f.Number(wall.OpenL[wall.Peak()-1], 0) + "."
	if said := read(t, html).words(); !strings.Contains(said, want) {
		t.Errorf("the bed's page does not say %q: %.600q", want, said)
	}
}

// Without weather the light is told all the same, and why no water is.
func TestLightPageWithoutWeather(t *testing.T) {
	h, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	for i := range h.Sites {
		h.Sites[i].Weather = ""
	}
	s, _ := serverOver(h, words.English())
	code, html := get(t, s, "/ground/light")
	if said := read(t, html).words(); code != http.StatusOK || strings.Contains(html, "light-water") || !strings.Contains(said, "weather") || !strings.Contains(said, "The same in figures") {
		t.Errorf("%d: %.600q", code, said)
	}
}
