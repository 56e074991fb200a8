package web

import (
	"encoding/base32"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
)

// visit is one request on its way to an answer.
type visit struct {
	*Server
	w      http.ResponseWriter
	r      *http.Request
	office *desk.Office
	untold []untoldSite // of which a page that hangs on the weather tells nothing
}

// pageHandler makes an answer, or returns an error that becomes one.
type pageHandler func(v *visit) error

// open serves a page that needs no holding.
func (s *Server) open(handle pageHandler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		office, err := s.offices("")
		v := &visit{Server: s, w: w, r: r, office: office}
		if err == nil {
			err = v.readForm()
		}
		if err == nil {
			err = handle(v)
		}
		if err != nil {
			v.fail(err)
		}
	})
}

// atHome serves a page of a holding; without one it leads to the first run.
func (s *Server) atHome(handle pageHandler) http.Handler {
	return s.open(func(v *visit) error {
		if there, err := v.hasHolding(); err != nil || !there {
			if err == nil {
				v.moveTo("/start")
			}
			return err
		}
		return handle(v)
	})
}

// hasHolding tells whether the household has begun.
func (v *visit) hasHolding() (bool, error) {
	_, err := v.office.Holding()
	if fault.KindOf(err) == fault.NotFound && err != nil {
		return false, nil
	}
	return err == nil, err
}

// readForm reads what was posted.
func (v *visit) readForm() error {
	if v.r.Method != http.MethodPost {
		return nil
	}
	var over *http.MaxBytesError
	switch err := v.r.ParseForm(); {
	case errors.As(err, &over):
		return tooLarge()
	case err != nil:
		return &fault.Error{Kind: fault.Invalid, Phrase: formUnreadable().Phrase, Err: err}
	}
	return nil
}

// show answers with a page.
func (v *visit) show(p page) error {
	there, err := v.hasHolding()
	if err != nil {
		return err
	}
	f := framed{page: p, Home: there}
	if there {
		if f.Said, err = v.said(); err != nil {
			return err
		}
	}
	body, err := v.pages.render(f)
	if err != nil {
		return err
	}
	if p.Status == 0 {
		p.Status = http.StatusOK
	}
	send(v.w, v.r, p.Status, "text/html; charset=utf-8", body)
	return nil
}

// moveTo sends the browser on with a GET.
func (v *visit) moveTo(path string) { http.Redirect(v.w, v.r, path, http.StatusSeeOther) }

// field returns what was posted in a field.
func (v *visit) field(name string) string { return v.r.PostFormValue(name) }

// base is the version of a row that a form was shown over.
func (v *visit) base() (int64, error) {
	base, err := strconv.ParseInt(v.field("base"), 10, 64)
	if err != nil {
		return 0, formUnreadable()
	}
	return base, nil
}

// formUnreadable is the fault of what none of our forms sends.
func formUnreadable() *fault.Error { return fault.New(fault.Invalid, "web.form_unreadable", nil) }

// query returns a value of the address.
func (v *visit) query(name string) string { return v.r.URL.Query().Get(name) }

// back returns the page to go back to after a form: the one it names, if it is
// one of ours.
func (v *visit) back(otherwise string) string { return ownPath(v.field("back"), otherwise) }

// linkBack is the page to go back to that a link named in its address.
func (v *visit) linkBack(otherwise string) string { return ownPath(v.query("back"), otherwise) }

// ownPath is a path where it is one of ours.
func ownPath(path, otherwise string) string {
	if strings.HasPrefix(path, "/") && !strings.HasPrefix(path, "//") && !strings.ContainsAny(path, "\\\r\n") {
		return path
	}
	return otherwise
}

// here is the address of the page without what was said on it.
func (v *visit) here() string {
	q := v.r.URL.Query()
	q.Del(keptQuery)
	if len(q) == 0 {
		return v.r.URL.Path
	}
	return v.r.URL.Path + "?" + q.Encode()
}

// letters writes ids: no sign that needs care in an address or a file.
var letters = base32.NewEncoding("abcdefghijklmnopqrstuvwxyz234567").WithPadding(base32.NoPadding)

// entry makes the id of an entry that a form will write: made when the form is
// shown, so that the same form sent twice writes once.
func (v *visit) entry() (string, error) {
	var b [15]byte
	if _, err := io.ReadFull(v.random, b[:]); err != nil {
		return "", err
	}
	return letters.EncodeToString(b[:]), nil
}
