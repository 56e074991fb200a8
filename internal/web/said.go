package web

import (
	"net/url"
	"strings"
	"time"

	"garner/internal/desk"
)

// keptQuery names the entry that a page tells of, so that what was done is said
// on a page with an address and nothing is kept between requests.
const keptQuery = "kept"

// said is what was just done, with the way to take it back.
type said struct {
	Text  string
	Entry string   // the entry that can be taken back
	Taken bool     // it has been taken back since, or never can be
	Back  string   // the page it is said on
	Wrong []string // what does not fit since
}

// said returns what the page is asked to tell of, nil when nothing.
func (v *visit) said() (*said, error) {
	id := v.query(keptQuery)
	if id == "" {
		return nil, nil
	}
	e, err := v.office.Entry(id)
	if err != nil || e == nil {
		return nil, err
	}
	s := &said{Text: v.sentence(e.What), Entry: e.ID, Taken: e.UndoneBy != "" || beganWith(e), Back: v.here()}
	if !s.Taken {
		s.Wrong = v.misfitsOf(e)
	}
	return s, nil
}

// kept leads to a page that tells what was written and offers to take it back.
func (v *visit) kept(e *desk.KeptEntry, path string) {
	if e == nil || e.ID == "" {
		v.moveTo(path)
		return
	}
	at, err := url.Parse(path)
	if err != nil {
		v.moveTo(path)
		return
	}
	q := at.Query()
	q.Set(keptQuery, e.ID)
	at.RawQuery = q.Encode()
	v.moveTo(at.String())
}

// author says in whose hand a form's entry is. The entry's id was made when the
// form was shown, so that the same form sent twice writes once.
func (v *visit) author() desk.Author {
	return desk.Author{Who: v.who, Device: deviceOf(v.r.UserAgent()), Entry: v.entryID(), At: v.now().UTC().Format(time.RFC3339)}
}

// entryID is the id a form gives its entry; a form without one gets a new one.
func (v *visit) entryID() string {
	id := v.field("entry")
	if len(id) >= 8 && len(id) <= 64 && !strings.ContainsFunc(id, func(r rune) bool { return !isLetterOrDigit(r) }) {
		return id
	}
	made, err := v.entry()
	if err != nil {
		v.log.Error("no random numbers", "error", err)
	}
	return made
}

func isLetterOrDigit(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '-'
}

// deviceOf names the sort of device that a browser says it runs on.
func deviceOf(agent string) string {
	switch {
	case strings.Contains(agent, "iPad"), strings.Contains(agent, "Tablet"), strings.Contains(agent, "Android") && !strings.Contains(agent, "Mobile"):
		return "tablet"
	case strings.Contains(agent, "Mobile"):
		return "phone"
	}
	return "computer"
}
