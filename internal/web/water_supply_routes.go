package web

// waterSupplyRoutes names the pages of what water there is, who gets it when it is
// short, and what goes along with it.
func (s *Server) waterSupplyRoutes(mux *router) {
	mux.Handle("GET /water/use", s.atHome(underWeather(waterUsePage)))
	mux.Handle("GET /water/butt", s.atHome(underWeather(buttPage)))
	mux.Handle("GET /water/short", s.atHome(underWeather(shortPage)))
	mux.Handle("GET /water/feed", s.atHome(underWeather(feedPage)))
	mux.Handle("POST /water/feed", s.atHome(feedPosted))
	mux.Handle("POST /water/feed/given", s.atHome(feedGivenPosted))
	mux.Handle("GET /water_sources", s.atHome(sourcesPage))
	mux.Handle("GET /moisture_readings", s.atHome(readingsPage))
	s.mountRows(mux, &sourceForm)
	s.mountRows(mux, &readingForm)
}

// waterNav is the entry of the navigation that the pages of water stand under.
const waterNav = "water"

// waterWays are the links from one page of water to another, and what none of them can
// tell.
type waterWays struct {
	Links  []wayLink
	Untold []untoldSite
}

func (v *visit) waterWays(here string) waterWays {
	out := waterWays{Untold: v.untold}
	for _, way := range []struct{ key, path string }{
		{"beds", "/water"}, {"use", "/water/use"}, {"butt", "/water/butt"}, {"short", "/water/short"}, {"feed", "/water/feed"},
		{"sources", "/water_sources"}, {"readings", "/moisture_readings"},
	} {
		out.Links = append(out.Links, wayLink{v.say("web.water_way_"+way.key, nil), way.path, way.key == here})
	}
	return out
}
