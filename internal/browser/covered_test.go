package browser_test

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// notLooked are what can be asked for and is not among the pages, and why.
var notLooked = map[string]string{
	"GET /static/":        "the stylesheet, the script and the pictures",
	"GET /week.ics":       "a calendar",
	"GET /start":          "looked at step by step in the first run",
	"GET /start/places":   "a part of the start's page, looked at in the first run",
	"GET /draft":          "looked at while a year is drafted",
	"GET /{table}/remove": "one page asks for every table before a row is removed; plantings stand for all",
	"GET /{table}/edit":   "the form of a new row with a row in it; those with parts of their own stand for all",
}

// Each page that the server lists is looked at on both screens.
func TestEveryRouteIsLookedAt(t *testing.T) {
	list, err := os.ReadFile(filepath.Join(root, "internal/web/testdata/pages.txt"))
	if err != nil {
		t.Fatal(err)
	}
	patterns := strings.Split(strings.TrimSpace(string(list)), "\n")
	mux := http.NewServeMux()
	for _, p := range patterns {
		mux.Handle(p, http.NotFoundHandler())
	}
	looked := map[string]bool{}
	for _, p := range samplePages() {
		r, err := http.NewRequest(http.MethodGet, p.path, nil)
		if err != nil {
			t.Fatal(err)
		}
		_, pattern := mux.Handler(r)
		looked[pattern] = true
	}
	looked["GET /planting/{id}/hole"] = true // where quarterLost leads
	for _, p := range patterns {
		if _, left := notLooked[kindOf(p)]; !looked[p] && !left {
			t.Errorf("no page of samplePages is at %s", p)
		}
	}
}

// kindOf is a pattern, or of the forms over all tables the kind of form.
func kindOf(pattern string) string {
	_, what, _ := strings.Cut(strings.TrimPrefix(pattern, "GET /"), "/")
	if what == "{id}/edit" || what == "{id}/remove" {
		return "GET /{table}" + strings.TrimPrefix(what, "{id}")
	}
	return pattern
}
