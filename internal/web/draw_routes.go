package web

// drawRoutes names the pages on which a site is drawn, and what is sent from them.
func (s *Server) drawRoutes(mux *router) {
	mux.Handle("GET /ground/draw", s.atHome(drawPage))
	mux.Handle("POST /ground/draw/add", s.atHome(drawAdd))
	mux.Handle("POST /ground/draw/{table}/{id}", s.atHome(drawSave))
	s.mountRows(mux, &featureForm)
	s.mountRows(mux, &siteForm)
}
