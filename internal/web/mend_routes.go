package web

// mendRoutes names the pages of what would mend a gap, and of which sowings could
// be smaller.
func (s *Server) mendRoutes(mux *router) {
	mux.Handle("GET /vegetable/{name}/mend", s.atHome(mendPage))
	mux.Handle("GET /vegetable/{name}/trim", s.atHome(trimPage))
}
