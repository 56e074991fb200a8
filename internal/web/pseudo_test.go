package web

import (
	"net/http"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/desk"
	"garner/internal/protect"
	"garner/internal/rotation"
	"garner/internal/words"
)

// spoken are the attributes that are read to a person.
var spoken = []string{"aria-label", "title", "alt", "placeholder", "data-single", "data-many"}

// letters finds what is left of a language once the catalogue's texts and the
// household's own words are taken out.
var latin = regexp.MustCompile(`[\p{L}]{2,}`)

// units are written by the formatter next to figures, in every language.
var unit = regexp.MustCompile(`\d[\d.,]*[\s\x{00a0}](?:m²|°C|%|(?:kg|g|m|L|mm|MJ)\b)`)

// Every text of a page comes from the catalogue: in the invented language, which
// marks each of its texts, nothing else is left on a page but what the household
// and the crop book call things.
func TestEveryTextComesFromTheCatalogue(t *testing.T) {
	h, office := garden(t, words.Pseudo())
	own := ownWords(t, office)
	for _, path := range pagesOf(t, h, office) {
		page := read(t, ask(h, "GET", path, "").Body.String())
		for _, text := range textsOf(page) {
			if stray := strayIn(text, own); stray != "" {
				t.Errorf("%s: %q is not from the catalogue, in %.90q", path, stray, text)
			}
		}
	}
}

// pagesOf are the addresses of all pages, with a line or two of each kind.
func pagesOf(t *testing.T, h http.Handler, office *desk.Office) []string {
	t.Helper()
	if _, err := office.TableView(nil); err != nil {
		t.Fatal(err)
	}
	// What takes a while is worked out before it is looked at.
	if _, err := office.AdviseView(desk.AdviseQuery{Bed: "h9", From: cal.Of(2027, 3, 1), Until: cal.Of(2027, 8, 20), AreaM2: 2}, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := office.RefillView(desk.AdviseQuery{Bed: "h9", From: cal.None, Until: cal.None}, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := office.KeepOrClearView("spi-26", nil); err != nil {
		t.Fatal(err)
	}
	return []string{"/", "/vegetable/carrot", "/planting/bee-27a", "/plantings", "/plantings?by=bed&show=all&q=bean", "/plantings?q=unicorn",
		"/beds", "/ground", "/ground?site=share&bed=t3&try=pot-27m%3Abed%3Ds5", "/beds/h1", "/wants", "/larder", "/larder/give", "/stores", "/history", "/credits", "/no-such-page", "/plantings/new", "/plantings/bee-27a/edit",
		"/plantings/bee-27a/remove", "/beds/new", "/beds/h1/edit", "/beds/h1/remove", "/covers/new?bed=h1", "/covers/h8-fleece/edit",
		"/wants/new", "/wants/w-leek/edit", "/groups/new", "/members/new", "/visits/new", "/gaps_left/new", "/purchases/new", "/stores/rack", "/stores/new", "/stores/sand/edit", "/stores/sand/remove",
		"/crops", "/crops?by=family", "/crops?name=bean", "/crops?name=zuchinni", "/crop/carrot", "/crop/runner-bean?use=table&site=share",
		"/ground/draw?site=home", "/ground/draw?pick=beds/h3", "/ground/draw?site=share&pick=features/thorn&zoom=2", "/features/new?site=home",
		"/features/pear/edit", "/sites/home/edit", "/features/pear/remove?back=/ground/draw",
		"/crop/rhubarb", "/planting/rhu-21", "/crops/new?crop=carrot&use=table&parameter=days_seed&unit=d", "/crops/own-1/edit",
		"/beds/s1", "/beds/h10", "/gear", "/gear/new", "/gear/mesh/edit", "/onhand", "/onhand/new", "/onhand/beet/edit",
		"/weather/files", "/weather/files/found/none", "/ground/light", "/ground/light?site=share&month=7", "/ground/light?month=13",
		"/beds/h9/next?from=2027-03-01&until=2027-08-20&area=2", "/beds/h9/next?hand=yes", "/beds/h9/next?from=soon", "/beds/h3/next?from=2028-06-30", "/planting/spi-26",
		"/planting/kal-26/lost", "/planting/tom-26/failing", "/planting/par-26/move"}
}

// ownWords are what the household and the crop book call things, the longest
// first.
func ownWords(t *testing.T, office *desk.Office) []string {
	t.Helper()
	seen := map[string]bool{}
	add := func(s string) {
		if len(strings.TrimSpace(s)) > 1 {
			seen[strings.ToLower(s)] = true
		}
	}
	for _, table := range []string{"holding", "sites", "beds", "features", "varieties", "plans", "stores", "weather", "water_sources", "plantings", "changes"} {
		rows, err := office.Rows(table)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			add(r.Cells["name"])
			if _, last, found := strings.Cut(r.Cells["name"], ", "); found {
				add(last) // "Frame, left" where there is little room
			}
			add(r.ID)
		}
	}
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range book.Crops() {
		for _, s := range []string{c.Name, c.Plural, c.Vegetable, c.Botanical, c.Family, c.FamilyName} {
			add(s)
		}
		for _, n := range book.NamesOf(c.ID) {
			add(n.Text)
			last, first, _ := strings.Cut(n.Text, ", ")
			add(first + " " + last) // as it is said
		}
		for _, u := range c.Uses {
			add(u.Label)
		}
	}
	for _, c := range book.Crops() {
		for _, key := range c.Cautions {
			if caution, ok := book.Caution(key); ok {
				add(caution.Text)
			}
		}
	}
	for _, s := range book.Sources() {
		add(s.Citation)
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, p := range book.Parameters() {
				f := u.Fact(p.Name)
				add(f.Where)
				add(f.Note)
			}
		}
	}
	numbers, err := office.Rows("crops")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range numbers {
		add(r.Cells["source"])
	}
	for _, p := range rotation.Problems() {
		add(p.Name)
	}
	for _, p := range protect.Pests() {
		add(p.Name)
	}
	add("Ottilie")
	var out []string
	for s := range seen {
		out = append(out, s)
	}
	sort.Slice(out, func(i, k int) bool { return len(out[i]) > len(out[k]) })
	return out
}

// textsOf are all texts of a page that a person reads or hears.
func textsOf(e *element) []string {
	var out []string
	if strings.TrimSpace(e.text) != "" && !strings.HasPrefix(e.text, "<!doctype") {
		out = append(out, e.text)
	}
	if len(e.children) > 0 && runsOn(e) {
		out = append(out, text(e))
	}
	for _, name := range spoken {
		if v := e.attrs[name]; v != "" {
			out = append(out, v)
		}
	}
	for _, c := range e.children {
		if !runsOn(e) {
			out = append(out, textsOf(c)...)
		}
	}
	return out
}

// runsOn tells whether a text runs on through an element, with parts of it made
// bold or set on lines of their own.
func runsOn(e *element) bool {
	bold := false
	for _, c := range e.children {
		if !slices.Contains([]string{"", "b", "a", "span", "em", "tspan"}, c.name) {
			return false
		}
		bold = bold || c.name == "b" || c.name == "tspan"
	}
	return bold
}

// strayIn returns what of a text came neither from the catalogue nor from the
// household's own words.
func strayIn(text string, own []string) string {
	var b strings.Builder
	depth := 0
	for _, r := range text {
		switch {
		case r == '⟦':
			depth++
		case r == '⟧':
			depth--
			b.WriteByte(' ')
		case depth == 0:
			b.WriteRune(r)
		}
	}
	rest := strings.ToLower(b.String())
	if !latin.MatchString(unit.ReplaceAllString(rest, " ")) {
		return ""
	}
	for _, word := range own {
		rest = strings.ReplaceAll(rest, word, " ")
	}
	return latin.FindString(unit.ReplaceAllString(rest, " "))
}

// Nothing runs or styles from inside a page, and every field has its label.
func TestPagesAreSound(t *testing.T) {
	h, office := garden(t, words.English())
	for _, path := range pagesOf(t, h, office) {
		w := ask(h, "GET", path, "")
		page := read(t, w.Body.String())
		labels := map[string]bool{}
		for _, l := range page.named("label") {
			labels[l.attrs["for"]] = true
		}
		ids := map[string]bool{}
		for _, e := range page.all(func(*element) bool { return true }) {
			checkElement(t, path, e, labels)
			if id := e.attrs["id"]; id != "" {
				if ids[id] {
					t.Errorf("%s: the id %s stands twice", path, id)
				}
				ids[id] = true
			}
		}
		if n := len(page.named("h1")); n != 1 {
			t.Errorf("%s has %d h1", path, n)
		}
		if page.one(t, "html").attrs["lang"] != "en" || page.one(t, "head").one(t, "title").words() == "" {
			t.Errorf("%s has no language or no title", path)
		}
	}
}

func checkElement(t *testing.T, path string, e *element, labels map[string]bool) {
	t.Helper()
	for name := range e.attrs {
		if name == "style" || strings.HasPrefix(name, "on") {
			t.Errorf("%s: <%s> has %s", path, e.name, name)
		}
	}
	if e.name == "style" || e.name == "script" && (e.attrs["src"] == "" || len(e.children) > 0) {
		t.Errorf("%s: <%s> stands inside the page", path, e.name)
	}
	if e.name == "a" && strings.HasPrefix(e.attrs["href"], "javascript:") {
		t.Errorf("%s: a link runs script", path)
	}
	if (e.name == "input" && e.attrs["type"] != "hidden" && e.attrs["type"] != "range" || e.name == "select" || e.name == "textarea") &&
		!labels[e.attrs["id"]] && e.attrs["aria-label"] == "" && !within(e, "label") {
		t.Errorf("%s: field %s has no label", path, e.attrs["name"])
	}
	if e.name == "form" && e.attrs["method"] == "post" && len(e.named("button")) == 0 {
		t.Errorf("%s: a form to %s has no button", path, e.attrs["action"])
	}
}

func within(e *element, name string) bool {
	for p := e.parent; p != nil; p = p.parent {
		if p.name == name {
			return true
		}
	}
	return false
}
