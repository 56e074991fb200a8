package web

// readingRoutes names the pages of the table, its vegetables and their plantings,
// and of the crop book.
func (s *Server) readingRoutes(mux *router) {
	mux.Handle("GET /{$}", s.atHome(tablePage))
	mux.Handle("GET /vegetable/{name}", s.atHome(vegetablePage))
	mux.Handle("GET /planting/{id}", s.atHome(plantingPage))
	mux.Handle("GET /crops", s.atHome(cropsPage))
	mux.Handle("GET /crop/{id}", s.atHome(cropPage))
	mux.Handle("POST /try/keep", s.atHome(keepTried))
}
