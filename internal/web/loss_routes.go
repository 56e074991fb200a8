package web

// lossRoutes names the pages on which something that went wrong is told.
func (s *Server) lossRoutes(mux *router) {
	for _, kind := range []string{lossLost, lossFailing, lossMove} {
		mux.Handle("GET /planting/{id}/"+kind, s.atHome(func(v *visit) error { return v.lossForm(kind) }))
		mux.Handle("POST /planting/{id}/"+kind, s.atHome(func(v *visit) error { return v.lossPosted(kind) }))
	}
	mux.Handle("GET /planting/{id}/hole", s.atHome(holePage))
	mux.Handle("POST /planting/{id}/accept", s.atHome(refillAccepted))
}
