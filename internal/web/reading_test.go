package web

import (
	"html/template"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/num"
	"garner/internal/words"
)

// shelf keeps one holding in memory, for the pages that read.
type shelf struct {
	desk.Keeper // the rest is not asked for
	h           *holding.Holding
	results     *results
}

func (k *shelf) Holding() (*holding.Holding, int64, error)      { return k.h, 1, nil }
func (k *shelf) Row(string, string) (journal.Row, int64, error) { return nil, 0, nil }
func (k *shelf) Result(d num.Digest) ([]byte, bool, error)      { return k.results.Result(d) }
func (k *shelf) Keep(d num.Digest, result []byte) error         { return k.results.Keep(d, result) }

// demo is a server over the demo holding, made once for all tests that read.
var demo = sync.OnceValues(func() (*Server, *desk.Office) {
	h, err := desk.Sample("")
	if err != nil {
		panic(err)
	}
	return serverOver(h, words.English())
})

func serverOver(h *holding.Holding, w *words.Catalogue) (*Server, *desk.Office) {
	office := desk.NewOffice(&shelf{results: answers, h: h})
	s, err := New(Options{Offices: func(string) (*desk.Office, error) { return office, nil }, Words: w, Who: "test", Log: slog.New(slog.NewTextHandler(os.Stderr, nil)),
		Now: func() time.Time { return time.Date(2027, 1, 4, 9, 0, 0, 0, time.UTC) }})
	if err != nil {
		panic(err)
	}
	return s, office
}

// get asks for a page.
func get(t testing.TB, s *Server, path string, headers ...string) (int, string) {
	t.Helper()
	r := httptest.NewRequest(http.MethodGet, "http://localhost"+path, nil)
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	return w.Code, w.Body.String()
}

func TestTableShowsEveryWantedVegetable(t *testing.T) {
	s, office := demo()
	code, html := get(t, s, "/")
	if code != http.StatusOK {
		t.Fatalf("%d: %s", code, html)
	}
	view, err := office.TableView(nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range view.Vegetables {
		v := &view.Vegetables[i]
		if fullWant(v.WantKg) > 0 && !strings.Contains(html, `data-vegetable="`+template.HTMLEscapeString(v.Name)+`"`) {
			t.Errorf("%s is wanted and has no row", v.Name)
		}
	}
}

// Every planting's page can be read.
func TestPlantingPagesAreRead(t *testing.T) {
	s, office := demo()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range h.Plantings {
		if i%9 != 0 || p.Plan != h.Plan {
			continue
		}
		if code, html := get(t, s, plantingPath(p.ID)); code != http.StatusOK || !strings.Contains(html, s.words.Format().SquareMetres(p.AreaM2)) {
			t.Errorf("%s: %d", p.ID, code)
		}
	}
}
