package web

import "net/http"

// lightRoutes names the page of the light on the ground.
func (s *Server) lightRoutes(mux *http.ServeMux) {
	mux.Handle("GET /ground/light", s.atHome(lightPage))
}
