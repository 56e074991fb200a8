package web

// besideRoutes names the page of plantings on the same ground.
func (s *Server) besideRoutes(mux *router) {
	mux.Handle("GET /planting/{id}/beside", s.atHome(besidePage))
}
