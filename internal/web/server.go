package web

import (
	"crypto/rand"
	"io"
	"log/slog"
	"net/http"
	"time"

	"garner/internal/desk"
	"garner/internal/words"
)

// Options are what the pages need from outside.
type Options struct {
	// Offices finds the desk of a household by its id; "" is the one household
	// there is as long as there are no accounts.
	Offices func(id string) (*desk.Office, error)
	Sample  func(by desk.Author, name string) error // begins the household as a copy of a sample; nil: none is offered
	Words   *words.Catalogue
	Who     string           // whose hand the entries are in
	Watcher *desk.Watcher    // of a folder of weather files; nil: none is watched
	Now     func() time.Time // nil: the clock
	Random  io.Reader        // of ids, nil: the system's
	Log     *slog.Logger     // nil: nothing is logged
}

// Server answers the pages of one data directory.
type Server struct {
	offices func(id string) (*desk.Office, error)
	sample  func(by desk.Author, name string) error
	words   *words.Catalogue
	who     string
	watcher *desk.Watcher
	found   foundShelf
	now     func() time.Time
	random  io.Reader
	log     *slog.Logger
	assets  *assets
	pages   *pages
	handler http.Handler
}

// New makes a server. The only errors are faults of the program's own files.
func New(o Options) (*Server, error) {
	s := &Server{offices: o.Offices, sample: o.Sample, words: o.Words.Spaced(noBreak), who: o.Who, watcher: o.Watcher, now: o.Now, random: o.Random, log: o.Log}
	if s.now == nil {
		s.now = time.Now
	}
	if s.random == nil {
		s.random = rand.Reader
	}
	if s.log == nil {
		s.log = slog.New(slog.DiscardHandler)
	}
	var err error
	if s.assets, err = loadAssets(); err != nil {
		return nil, err
	}
	if s.pages, err = loadPages(s.funcs()); err != nil {
		return nil, err
	}
	s.handler = s.guarded(s.routes())
	return s, nil
}

// Handler returns everything the server answers, guarded.
func (s *Server) Handler() http.Handler { return s.handler }

// noBreak stands between a number and its unit, so that they stay on one line.
const noBreak = "\u00a0"
