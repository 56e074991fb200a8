package web

// draftRoutes names the page of a drafted year and what is done on it.
func (s *Server) draftRoutes(mux *router) {
	mux.Handle("GET /draft", s.atHome(draftPage))
	mux.Handle("POST /draft", s.atHome(startDraft))
	mux.Handle("POST /draft/stop", s.atHome(stopDraft))
	mux.Handle("POST /draft/keep", s.atHome(keepDraft))
}
