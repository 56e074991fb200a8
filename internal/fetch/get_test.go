package fetch

import (
	"context"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"garner/internal/desk"
)

// patience is short enough for a test and long enough for a machine that is busy.
const patience = 1500 * time.Millisecond

// served asks a server that answers in a way.
func served(t *testing.T, ask desk.FetchAsk, answer http.HandlerFunc) (*desk.FetchAnswer, error) {
	t.Helper()
	s := httptest.NewServer(answer)
	t.Cleanup(s.Close)
	ask.URL = s.URL + ask.URL
	return New(patience).Get(context.Background(), ask)
}

func TestGet(t *testing.T) {
	got, err := served(t, desk.FetchAsk{URL: "/days?key=secret"}, func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("ETag", `"one"`)
		w.Header().Set("Last-Modified", "Sat, 01 May 2027 10:00:00 GMT")
		_, _ = w.Write([]byte("date,tmin_c,tmax_c\n"))
	})
	if err != nil || string(got.Body) != "date,tmin_c,tmax_c\n" || got.Tag != `"one"` || got.Modified == "" {
		t.Errorf("got %+v, %v", got, err)
	}
}

// An answer that is known is not sent again (RFC 9110, 13.1).
func TestGetAsksOnlyForWhatChanged(t *testing.T) {
	got, err := served(t, desk.FetchAsk{Tag: `"one"`, Modified: "Sat, 01 May 2027 10:00:00 GMT"}, func(w http.ResponseWriter, r *http.Request) {
		if r.Header.Get("If-None-Match") == `"one"` && r.Header.Get("If-Modified-Since") != "" {
			w.WriteHeader(http.StatusNotModified)
		}
	})
	if err != nil || !got.Unchanged {
		t.Errorf("got %+v, %v", got, err)
	}
}

// A server that fails, hangs, drips, floods, or sends on to elsewhere is a fault that
// says why and holds nobody up; the address, which may hold a key, is not in it.
func TestGetThatFails(t *testing.T) {
	elsewhere := httptest.NewServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { t.Error("another host was asked") }))
	defer elsewhere.Close()
	for want, answer := range map[string]http.HandlerFunc{
		"fetch.status":    func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusInternalServerError) },
		"fetch.slow":      func(_ http.ResponseWriter, r *http.Request) { <-r.Context().Done() },
		"fetch.elsewhere": func(w http.ResponseWriter, r *http.Request) { http.Redirect(w, r, elsewhere.URL, http.StatusFound) },
		"fetch.no_answer": func(w http.ResponseWriter, _ *http.Request) {
			c, _, err := http.NewResponseController(w).Hijack()
			if err == nil {
				_ = c.Close()
			}
		},
		"fetch.long": func(w http.ResponseWriter, _ *http.Request) {
			for range mostBytes>>16 + 1 {
				_, _ = w.Write(make([]byte, 1<<16))
			}
		},
	} {
		_, err := served(t, desk.FetchAsk{URL: "/days?key=secret"}, answer)
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "secret") {
			t.Errorf("want %s, got %v", want, err)
		}
	}
	// A body that drips for ever.
	if _, err := served(t, desk.FetchAsk{}, func(w http.ResponseWriter, r *http.Request) {
		for r.Context().Err() == nil {
			_, _ = w.Write([]byte("1"))
			w.(http.Flusher).Flush()
			time.Sleep(20 * time.Millisecond)
		}
	}); err == nil || !strings.Contains(err.Error(), "fetch.slow") {
		t.Errorf("a body that drips: %v", err)
	}
	// A ring of redirects within the host.
	if _, err := served(t, desk.FetchAsk{}, func(w http.ResponseWriter, r *http.Request) { http.Redirect(w, r, "/again", http.StatusFound) }); err == nil {
		t.Error("a ring of redirects gave an answer")
	}
}

func TestGetStaysOnTheHost(t *testing.T) {
	got, err := served(t, desk.FetchAsk{URL: "/old"}, func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/old" {
			http.Redirect(w, r, "/new", http.StatusMovedPermanently)
			return
		}
		_, _ = w.Write([]byte("here"))
	})
	if err != nil || string(got.Body) != "here" {
		t.Errorf("got %+v, %v", got, err)
	}
}

func TestGetAsksOnlyHTTP(t *testing.T) {
	for _, u := range []string{"file:///etc/passwd", "ftp://127.0.0.1/x", "/days", "http:///x", "://"} {
		if _, err := New(time.Second).Get(context.Background(), desk.FetchAsk{URL: u}); err == nil || !strings.Contains(err.Error(), "fetch.bad_address") {
			t.Errorf("%s: %v", u, err)
		}
	}
}
