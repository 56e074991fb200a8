package web

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// noOffice stands where no page asks the desk.
func noOffice(string) (*desk.Office, error) {
	return nil, fault.New(fault.NotFound, "desk.holding_missing", words.Args{"path": "-"})
}

// The names are those that RFC 6761 (6.3) and RFC 5735 (3) keep for one's own
// machine; a name that merely points there is what DNS rebinding uses.
func TestOnlyThisMachineIsServed(t *testing.T) {
	for address, ok := range map[string]bool{
		"127.0.0.1:8420": true, "[::1]:8420": true, "localhost:0": true, "127.8.8.8:1": true,
		":8420": false, "0.0.0.0:8420": false, "192.168.1.4:8420": false, "[::]:8420": false, "garner.example:80": false, "8420": false,
	} {
		if got := CheckAddress(address) == nil; got != ok {
			t.Errorf("%s: served %v, want %v", address, got, ok)
		}
	}
	for host, ok := range map[string]bool{
		"localhost:8420": true, "127.0.0.1:8420": true, "[::1]:8420": true, "localhost": true, "LOCALHOST:1": true, "[::1]": true,
		"rebound.example:8420": false, "127.0.0.1.example": false, "localhost.example": false, "": false, "192.168.1.4:8420": false,
	} {
		if got := isOwnHost(host); got != ok {
			t.Errorf("host %q: taken %v, want %v", host, got, ok)
		}
	}
}

func newServer(t *testing.T, o Options) http.Handler {
	t.Helper()
	if o.Words == nil {
		o.Words = words.English()
	}
	if o.Offices == nil {
		o.Offices = noOffice
	}
	s, err := New(o)
	if err != nil {
		t.Fatal(err)
	}
	return s.Handler()
}

// ask sends a request as a browser on this machine does.
func ask(h http.Handler, method, path, form string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://localhost:8420"+path, strings.NewReader(form))
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
			continue
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func TestEveryAnswerIsGuarded(t *testing.T) {
	h := newServer(t, Options{})
	for _, path := range []string{"/credits", "/no-such-page", "/static/nothing"} {
		w := ask(h, "GET", path, "")
		csp := w.Header().Get("Content-Security-Policy")
		if !strings.HasPrefix(csp, "default-src 'self'") || strings.Contains(csp, "unsafe") {
			t.Errorf("%s: policy %q", path, csp)
		}
		if w.Header().Get("X-Content-Type-Options") != "nosniff" || w.Header().Get("Referrer-Policy") == "" {
			t.Errorf("%s: headers %v", path, w.Header())
		}
	}
	if w := ask(h, "GET", "/credits", "", "Host", "rebound.example:8420"); w.Code != http.StatusMisdirectedRequest {
		t.Errorf("a foreign host got %d", w.Code)
	}
	if w := ask(h, "POST", "/undo", "entry=x", "Sec-Fetch-Site", "cross-site"); w.Code != http.StatusForbidden {
		t.Errorf("a form from another site got %d", w.Code)
	}
	if w := ask(h, "POST", "/undo", "entry=x", "Sec-Fetch-Site", "", "Origin", "https://elsewhere.example"); w.Code != http.StatusForbidden {
		t.Errorf("a form of another origin got %d", w.Code)
	}
}

func TestAPanicIsApologisedFor(t *testing.T) {
	h := newServer(t, Options{Offices: func(string) (*desk.Office, error) { panic("secret inside") }})
	w := ask(h, "GET", "/credits", "")
	if w.Code != http.StatusInternalServerError || strings.Contains(w.Body.String(), "secret") || !strings.Contains(w.Body.String(), "mistake") {
		t.Errorf("got %d %s", w.Code, w.Body.String())
	}
}

func TestStaticFilesAreKeptAndPagesAskedAfter(t *testing.T) {
	h := newServer(t, Options{})
	page := ask(h, "GET", "/no-such-page", "", "Accept-Encoding", "gzip").Body
	if page.Len() == 0 {
		t.Fatal("no page")
	}
	a, err := loadAssets()
	if err != nil {
		t.Fatal(err)
	}
	w := ask(h, "GET", a.path("style.css"), "", "Accept-Encoding", "br, gzip")
	if w.Code != http.StatusOK || !strings.Contains(w.Header().Get("Cache-Control"), "immutable") || w.Header().Get("Content-Encoding") != "gzip" {
		t.Errorf("style: %d %v", w.Code, w.Header())
	}
	if w := ask(h, "GET", a.path("style.css"), "", "Accept-Encoding", "gzip;q=0"); w.Header().Get("Content-Encoding") != "" {
		t.Error("zipped for a browser that does not take it")
	}
}

// A page that has not changed is not sent again, and is zipped for whoever takes
// it; a form over its bound is refused.
func TestPagesAreSentSparingly(t *testing.T) {
	h, _ := garden(t, words.English())
	first := ask(h, "GET", "/history", "", "Accept-Encoding", "gzip")
	if first.Code != http.StatusOK || first.Header().Get("Content-Encoding") != "gzip" || first.Header().Get("ETag") == "" {
		t.Fatalf("%d %v", first.Code, first.Header())
	}
	again := ask(h, "GET", "/history", "", "Accept-Encoding", "gzip", "If-None-Match", first.Header().Get("ETag"))
	if again.Code != http.StatusNotModified || again.Body.Len() != 0 {
		t.Errorf("asked after: %d, %d bytes", again.Code, again.Body.Len())
	}
	if w := ask(h, "POST", "/beds/new", "name="+strings.Repeat("x", mostForm)); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("a form of over a megabyte got %d", w.Code)
	}
}

// make web bundles the script; make test does it first.
func TestScriptIsBundled(t *testing.T) {
	a, err := loadAssets()
	if err != nil {
		t.Fatal(err)
	}
	if a.path("main.js") == "" {
		t.Error("the script of the pages is not bundled: run make web")
	}
}
