package web

// nextRoutes names the pages of what to put where ground comes free, and of
// leaving or clearing.
func (s *Server) nextRoutes(mux *router) {
	mux.Handle("GET /beds/{id}/next", s.atHome(nextPage))
	mux.Handle("POST /beds/{id}/next", s.atHome(acceptNext))
	mux.Handle("POST /planting/{id}/clear", s.atHome(clearThen))
}
