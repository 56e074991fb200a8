package web

// lanesRoutes names the page of the ground.
func (s *Server) lanesRoutes(mux *router) {
	mux.Handle("GET /ground", s.atHome(groundYear))
}
