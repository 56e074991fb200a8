package web

import (
	"net/http"

	"garner/internal/words"
)

// router is what the pages are named to. It remembers what was named, so that the tests
// can hold every page to what all pages must be.
type router struct {
	*http.ServeMux
	patterns []string
}

// Handle names a page.
func (r *router) Handle(pattern string, page http.Handler) {
	r.patterns = append(r.patterns, pattern)
	r.ServeMux.Handle(pattern, page)
}

// HandleFunc names a page that is a function.
func (r *router) HandleFunc(pattern string, page func(http.ResponseWriter, *http.Request)) {
	r.Handle(pattern, http.HandlerFunc(page))
}

// routes names every page.
func (s *Server) routes() *router {
	mux := &router{ServeMux: http.NewServeMux()}
	mux.HandleFunc("GET /static/", s.static)
	mux.Handle("GET /credits", s.open(credits))
	s.readingRoutes(mux)
	s.editingRoutes(mux)
	s.lanesRoutes(mux)
	s.nextRoutes(mux)
	s.lightRoutes(mux)
	s.tendRoutes(mux)
	s.waterSupplyRoutes(mux)
	s.besideRoutes(mux)
	s.weekRoutes(mux)
	s.freeRoutes(mux)
	s.mendRoutes(mux)
	s.lossRoutes(mux)
	s.pickRoutes(mux)
	s.drawRoutes(mux)
	s.plansRoutes(mux)
	s.draftRoutes(mux)
	s.larderRoutes(mux)
	s.wantsRoutes(mux)
	mux.Handle("GET /frost", s.atHome(frostPage))
	mux.Handle("POST /frost/blossom", s.atHome(blossomPosted))
	s.riskRoutes(mux)
	s.weatherRoutes(mux)
	s.weatherFileRoutes(mux)
	s.waterRoutes(mux)
	mux.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) {
		s.refuse(w, r, http.StatusNotFound, words.P("web.no_such_page", words.Args{"path": r.URL.Path}))
	})
	return mux
}
