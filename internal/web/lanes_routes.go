package web

import "net/http"

// lanesRoutes names the page of the ground.
func (s *Server) lanesRoutes(mux *http.ServeMux) {
	mux.Handle("GET /ground", s.atHome(groundYear))
}
