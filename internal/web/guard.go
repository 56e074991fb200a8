package web

import (
	"net"
	"net/http"
	"runtime/debug"
	"slices"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// mostForm is the largest body of a form [bytes].
const mostForm = 1 << 20

// mostUpload is the largest body of a form that brings weather files [bytes]: ten
// years of a home station's archive.
const mostUpload = 2 << 30

// policy lets a page load only what this server serves. Nothing runs or styles
// from inside a page.
const policy = "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'"

// ownHosts are the names under which a server on this machine alone is reached.
// Any other name in a request means that a foreign page has had its name point
// here (DNS rebinding).
var ownHosts = []string{"localhost", "127.0.0.1", "::1"}

// guarded puts what holds for every request before the routes.
func (s *Server) guarded(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.refuse(w, r, http.StatusForbidden, words.P("web.cross_origin", nil))
	}))
	return s.headed(s.caught(s.hosted(s.limited(cross.Handler(next)))))
}

// headed sets the headers of every answer.
func (s *Server) headed(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		next.ServeHTTP(w, r)
	})
}

// caught turns a panic into an apology; what happened goes to the log.
func (s *Server) caught(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			cause := recover()
			if cause == nil {
				return
			}
			s.log.Error("a page failed", "method", r.Method, "path", r.URL.Path, "cause", cause, "stack", string(debug.Stack()))
			s.refuse(w, r, http.StatusInternalServerError, words.P("web.our_mistake", nil))
		}()
		next.ServeHTTP(w, r)
	})
}

// hosted refuses a request that names another host.
func (s *Server) hosted(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !isOwnHost(r.Host) {
			s.refuse(w, r, http.StatusMisdirectedRequest, words.P("web.foreign_host", words.Args{"host": r.Host}))
			return
		}
		next.ServeHTTP(w, r)
	})
}

// isOwnHost reads the Host header: a name of this machine, with or without port.
func isOwnHost(given string) bool {
	host := given
	if h, _, err := net.SplitHostPort(given); err == nil {
		host = h
	}
	host = strings.TrimSuffix(strings.TrimPrefix(host, "["), "]")
	return slices.Contains(ownHosts, strings.ToLower(host))
}

// limited bounds the body of a request.
func (s *Server) limited(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		most := int64(mostForm)
		if r.URL.Path == weatherLookPath {
			most = mostUpload
		}
		r.Body = http.MaxBytesReader(w, r.Body, most)
		next.ServeHTTP(w, r)
	})
}

// tooLarge is the fault of a body over its bound.
func tooLarge() *fault.Error { return fault.New(fault.Invalid, "web.form_too_large", nil) }
