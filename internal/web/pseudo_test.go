package web

import (
	"maps"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"

	"garner/internal/crop"
	"garner/internal/desk"
	"garner/internal/observed"
	"garner/internal/protect"
	"garner/internal/risk"
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
func comesFromTheCatalogue(t *testing.T, office *desk.Office, pages []string) {
	h := newServer(t, optionsOver(office, words.Pseudo()))
	own, seen := ownWords(t, office), map[string]bool{}
	for _, path := range pages {
		page := read(t, ask(h, "GET", path, "").Body.String())
		for _, text := range textsOf(page) {
			if seen[text] {
				continue
			}
			seen[text] = true
			if stray := strayIn(text, own); stray != "" {
				t.Errorf("%s: %q is not from the catalogue, in %.90q", path, stray, text)
			}
		}
	}
}

// ownWords are what the household and the crop book call things, the longest first.
func ownWords(t *testing.T, office *desk.Office, more ...string) []string {
	t.Helper()
	seen := map[string]bool{}
	add := func(s string) {
		if len(strings.TrimSpace(s)) > 1 {
			seen[strings.ToLower(s)] = true
		}
	}
	for _, table := range []string{"holding", "sites", "beds", "features", "varieties", "plans", "stores", "weather", "water_sources", "plantings", "changes", "own_jobs", "sensors"} {
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
	for _, u := range observed.AllUnits() {
		add(u)
	}
	for _, s := range sourcesOfRisks(t) {
		add(s)
	}
	for _, s := range append(more, "Ottilie", "http://localhost:8420/week.ics", "weather.example") {
		add(s)
	}
	return slices.SortedFunc(maps.Keys(seen), func(a, b string) int { return len(b) - len(a) })
}

// sourcesOfRisks are where the rules for risks and their numbers are printed.
func sourcesOfRisks(t *testing.T) (out []string) {
	t.Helper()
	book, err := risk.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range book.Rules {
		out = append(out, r.Source, r.URL, r.Cause)
		for _, n := range r.Numbers {
			out = append(out, n.Source)
		}
		for _, m := range r.Measures {
			out = append(out, m.Source)
		}
		for _, e := range r.Events {
			out = append(out, e.Source, e.Region)
		}
	}
	for _, b := range book.Blossoms {
		out = append(out, b.Source, b.SumSource)
	}
	for _, h := range book.Heats {
		out = append(out, h.Source)
	}
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
func areSound(t *testing.T, h http.Handler, pages []string) {
	for _, path := range pages {
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
