package web

import (
	"net/http"

	"garner/internal/words"
)

// routes names every page.
func (s *Server) routes() http.Handler {
	mux := http.NewServeMux()
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
