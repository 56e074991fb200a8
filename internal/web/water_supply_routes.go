package web

// waterSupplyRoutes names the pages of what water there is, who gets it when it is
// short, and what goes along with it.
func (s *Server) waterSupplyRoutes(mux *router) {
	mux.Handle("GET /water/use", s.atHome(waterUsePage))
	mux.Handle("GET /water/butt", s.atHome(buttPage))
	mux.Handle("GET /water/short", s.atHome(shortPage))
	mux.Handle("GET /water/feed", s.atHome(feedPage))
	mux.Handle("POST /water/feed", s.atHome(feedPosted))
	mux.Handle("POST /water/feed/given", s.atHome(feedGivenPosted))
	mux.Handle("GET /water_sources", s.atHome(sourcesPage))
	mux.Handle("GET /moisture_readings", s.atHome(readingsPage))
	s.mountRows(mux, &sourceForm)
	s.mountRows(mux, &readingForm)
}

// waterNav is the entry of the navigation that the pages of water stand under.
const waterNav = "water"

// waterWays are the links from one page of water to another.
func (v *visit) waterWays(here string) []wayLink {
	var out []wayLink
	for _, way := range []struct{ key, path string }{
		{"beds", "/water"}, {"use", "/water/use"}, {"butt", "/water/butt"}, {"short", "/water/short"}, {"feed", "/water/feed"},
		{"sources", "/water_sources"}, {"readings", "/moisture_readings"},
	} {
		out = append(out, wayLink{v.say("web.water_way_"+way.key, nil), way.path, way.key == here})
	}
	return out
}
