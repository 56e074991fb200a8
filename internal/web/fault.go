package web

import (
	"errors"
	"net/http"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// statuses is what each kind of fault answers with.
var statuses = map[fault.Kind]int{
	fault.Invalid:    http.StatusUnprocessableEntity,
	fault.OutOfRange: http.StatusUnprocessableEntity,
	fault.NotFound:   http.StatusNotFound,
	fault.Conflict:   http.StatusConflict,
	fault.NoAnswer:   http.StatusOK,
	fault.Internal:   http.StatusInternalServerError,
}

// faultBody is what the page of a fault is given.
type faultBody struct {
	Title   string // a key
	Phrases []words.Phrase
}

// fail answers with the page of a fault. What is none of ours is logged and
// apologised for.
func (v *visit) fail(err error) {
	var conflict *desk.Conflict
	if errors.As(err, &conflict) {
		err = conflictOf(conflict)
	}
	if desk.LacksWeather(err) && v.showWeatherless() {
		return
	}
	kind := fault.KindOf(err)
	if kind == fault.Internal {
		v.log.Error("a page failed", "method", v.r.Method, "path", v.r.URL.Path, "error", err)
		v.refuse(v.w, v.r, statuses[kind], words.P("web.our_mistake", nil))
		return
	}
	v.refuse(v.w, v.r, statuses[kind], phrasesOf(err)...)
}

// phrasesOf returns what an error says to a person.
func phrasesOf(err error) []words.Phrase {
	var list fault.List
	var one *fault.Error
	var out []words.Phrase
	switch {
	case errors.As(err, &list):
		for _, f := range list {
			out = append(out, f.Phrase)
		}
	case errors.As(err, &one):
		out = append(out, one.Phrase)
	}
	return out
}

// refuse answers with a page that says why, without asking the desk anything.
func (s *Server) refuse(w http.ResponseWriter, r *http.Request, status int, why ...words.Phrase) {
	body := faultBody{Title: faultTitle(status), Phrases: why}
	html, err := s.pages.render(framed{page: page{Name: "fault", Body: body}, Home: status != http.StatusMisdirectedRequest})
	if err != nil {
		s.log.Error("the page of a fault failed", "error", err)
		http.Error(w, s.words.Text(words.P("web.our_mistake", nil)), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Cache-Control", "no-store")
	send(w, r, status, "text/html; charset=utf-8", html)
}

// faultTitle is the key of the title over a fault.
func faultTitle(status int) string {
	switch status {
	case http.StatusNotFound:
		return "web.fault_not_found"
	case http.StatusInternalServerError:
		return "web.fault_ours"
	}
	return "web.fault_cannot"
}
