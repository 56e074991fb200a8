package web

// lightRoutes names the page of the light on the ground.
func (s *Server) lightRoutes(mux *router) {
	mux.Handle("GET /ground/light", s.atHome(lightPage))
}
