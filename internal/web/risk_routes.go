package web

import (
	"net/url"
)

// riskRoutes names the pages of what the weather puts at risk.
func (s *Server) riskRoutes(mux *router) {
	mux.Handle("GET /risk", s.atHome(riskPage))
	mux.Handle("GET /risk/{rule}", s.atHome(riskRulePage))
	mux.Handle("GET /risk/sighting", s.atHome(sightingPage))
	mux.Handle("POST /risk/sighting", s.atHome(sightingPosted))
	mux.Handle("GET /risk/hours", s.atHome(hoursPage))
	mux.Handle("POST /risk/hours", s.atHome(hoursPosted))
}

func rulePath(rule string) string { return "/risk/" + url.PathEscape(rule) }

// sightingPath is the form of a sighting, with what is known of it.
func sightingPath(problem, planting, bed string) string {
	q := url.Values{}
	for name, v := range map[string]string{"problem": problem, "planting": planting, "bed": bed} {
		if v != "" {
			q.Set(name, v)
		}
	}
	if len(q) == 0 {
		return "/risk/sighting"
	}
	return "/risk/sighting?" + q.Encode()
}
