package web

// editingRoutes names the pages of what the household has and grows.
func (s *Server) editingRoutes(mux *router) {
	mux.Handle("GET /plantings", s.atHome(plantings))
	mux.Handle("GET /beds", s.atHome(beds))
	mux.Handle("GET /beds/{id}", s.atHome(bed))
	mux.Handle("GET /wants", s.atHome(wants))
	mux.Handle("GET /stores", s.atHome(stores))
	mux.Handle("GET /history", s.atHome(history))
	mux.Handle("GET /start", s.open(startPage))
	mux.Handle("POST /start", s.open(startPosted))
	mux.Handle("GET /start/places", s.open(startPlaces))
	mux.Handle("POST /start/sample", s.open(startSample))
	mux.Handle("POST /undo", s.atHome(undo))
	for _, f := range []*rowForm{&plantingForm, &bedForm, &coverForm, &wantForm, &storeForm, &numberForm} {
		s.mountRows(mux, f)
	}
	s.mountOnly(mux, &kitchenForm)
}
