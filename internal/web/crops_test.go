package web

import (
	"net/http"
	"slices"
	"strings"
	"testing"

	"garner/internal/crop"
	"garner/internal/desk"
	"garner/internal/words"
)

// A name leads to its crop, one that several share lists them, and one nobody
// knows is answered with the nearest and the whole book.
func TestNamesLeadToCrops(t *testing.T) {
	h, _ := garden(t, words.English())
	for name, path := range map[string]string{"zucchini": "/crop/courgette", "Pisum+sativum": "/crop/pea", "turnip+greens": "/crop/turnip?use=tops"} {
		w := ask(h, "GET", "/crops?name="+name, "")
		if w.Code != http.StatusSeeOther || w.Header().Get("Location") != path {
			t.Errorf("%s leads to %q (%d), not to %s", name, w.Header().Get("Location"), w.Code, path)
		}
	}
	lines := func(page *element) (out []string) {
		for _, e := range page.named("li") {
			if strings.HasPrefix(e.attrs["class"], "crop-line") {
				out = append(out, e.named("a")[0].words())
			}
		}
		return out
	}
	if got := lines(open(t, h, "/crops?name=bean")); !slices.Contains(got, "Runner bean") || slices.Contains(got, "Carrot") {
		t.Errorf("bean lists %v", got)
	}
	page := open(t, h, "/crops?name=zuchinni")
	if !strings.Contains(page.words(), "No crop answers to zuchinni. Was one of these meant?") || page.one(t, "ul", "class", "nearest").named("a")[0].words() != "Zucchini" {
		t.Error("zuchinni is not answered with zucchini")
	}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/crops", "/crops?by=family"} {
		if got := lines(open(t, h, path)); len(got) != len(book.Crops()) {
			t.Errorf("%s lists %d of %d crops", path, len(got), len(book.Crops()))
		}
	}
}

// Every crop's page can be read, in its common use, with all of its cautions.
func TestEveryCropIsRead(t *testing.T) {
	s, office := demo()
	list, err := office.CropList()
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range list {
		if i%9 != 0 && c.ID != "rhubarb" && c.ID != "potato" {
			continue
		}
		code, html := get(t, s, "/crop/"+c.ID)
		if code != http.StatusOK {
			t.Errorf("%s: %d", c.ID, code)
			continue
		}
		view, err := office.CropView(c.ID, "")
		if err != nil {
			t.Fatal(err)
		}
		text := read(t, html).words()
		for _, caution := range view.Cautions {
			if !strings.Contains(text, caution) {
				t.Errorf("%s does not tell: %s", c.ID, caution)
			}
		}
		if strings.Contains(text, "map[") || strings.Contains(text, "%!") || strings.Contains(text, "web.") || strings.Contains(text, "words.") {
			t.Errorf("%s shows a key or a value: %s", c.ID, text)
		}
	}
	for _, path := range []string{"/crop/unicorn", "/crop/carrot?use=unicorn", "/crop/carrot?site=unicorn"} {
		if code, _ := get(t, s, path); code != http.StatusNotFound {
			t.Errorf("%s: %d", path, code)
		}
	}
}

// The sentences and the figures of the year are the desk's.
func TestYearOfACropIsTold(t *testing.T) {
	s, office := demo()
	year, err := office.CropYear("carrot", "table", "")
	if err != nil {
		t.Fatal(err)
	}
	_, html := get(t, s, "/crop/carrot?use=table")
	text := strings.ReplaceAll(read(t, html).words(), noBreak, " ")
	for _, start := range year.Starts {
		for _, w := range start.Spells {
			f := words.English().Format()
			if said := "Sow " + f.MonthDay(dayOf(w.First)) + " to " + f.MonthDay(dayOf(w.Last)); start.Same == "" && !strings.Contains(text, said) {
				t.Errorf("the page does not say %q", said)
			}
			if row := f.Day(w.First) + " " + f.Day(w.Last) + " " + f.Day(w.ReadyFrom) + " " + f.Day(w.ReadyTo) + " " + f.Percent(w.Chance); !strings.Contains(text, row) {
				t.Errorf("the figures lack %q", row)
			}
		}
	}
}

// A page does not wait for a year that takes long: it tells so and shows the rest.
func TestYearThatIsStillComingIsTold(t *testing.T) {
	s, _ := demo()
	for shown, b := range map[string]*cropBody{"web.crop_year_coming": {View: &desk.CropView{}, Coming: "/crop/carrot?use=table"}, "web.crop_no_year": {View: &desk.CropView{}, NoYear: s.say("web.crop_no_year", nil)}} {
		out, err := s.pages.renderPart(page{Name: "crop", Body: b})
		if err != nil {
			t.Fatal(err)
		}
		page := read(t, string(out))
		if text := page.words(); !strings.Contains(text, s.say(shown, nil)) || !strings.Contains(text, s.say("web.crop_recorded", nil)) {
			t.Errorf("%s is not told beside the rest: %s", shown, text)
		}
		if b.Coming != "" && !strings.Contains(string(out), "data-stale") {
			t.Error("the page does not ask again by itself")
		}
	}
}

// A perennial tells when its heir goes in, on its crop's page and on its own.
// Rhubarb is split every five to eight years: common practice, no source.
func TestHeirOfAPerennialIsTold(t *testing.T) {
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	own := *h
	own.Overrides = append(slices.Clone(h.Overrides), crop.Override{ID: "renew", Crop: "rhubarb", Parameter: "renew_years", Value: "9", Unit: "a"})
	s, _ := serverOver(&own, words.English())
	for _, path := range []string{"/crop/rhubarb", "/planting/rhu-21"} {
		code, html := get(t, s, path)
		text := read(t, html).words()
		if code != http.StatusOK || !strings.Contains(text, "plant the next about mid November 2028, so that it bears half by mid November 2030") {
			t.Errorf("%s: %d, no heir in %s", path, code, text)
		}
		if !strings.Contains(text, "Of a full yield: nothing in the first season") {
			t.Errorf("%s does not tell the yields by age", path)
		}
	}
}

// A number is corrected by hand; the book's stays beside it; what is no number is
// refused in its place.
func TestNumberIsCorrectedByHand(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/crop/carrot?use=table")
	link := ""
	for _, a := range page.named("a") {
		if strings.Contains(a.attrs["href"], "parameter=days_seed") {
			link = a.attrs["href"]
		}
	}
	form := formTo(t, open(t, h, link), "/crops/new")
	if w := post(t, h, form, "value", "soon"); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("a word is taken for a number: %d", w.Code)
	}
	if w := post(t, h, form, "value", "3"); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("carrots in three days: %d", w.Code)
	}
	after := follow(t, h, post(t, h, form, "value", "84", "source", "own notes"))
	text := after.words()
	if !strings.Contains(text, "84 days") || !strings.Contains(text, "Your own: own notes. The book has 70 days, ") {
		t.Errorf("the own number is not told beside the book's")
	}
	view, err := office.CropView("carrot", "table")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range view.Brief.Days {
		if d.Method == crop.Seed && d.Days != 84 {
			t.Errorf("the crop is reckoned with %g days", d.Days)
		}
	}
}
