package web

import "net/http"

// besideRoutes names the page of plantings on the same ground.
func (s *Server) besideRoutes(mux *http.ServeMux) {
	mux.Handle("GET /planting/{id}/beside", s.atHome(besidePage))
}
