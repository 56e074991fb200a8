package cli

import (
	"slices"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/near"
	"garner/internal/place"
	"garner/internal/words"
)

// mainSample and southSample name the two demo holdings.
const (
	mainSample  = "main"
	southSample = "south"
)

var samples = []string{mainSample, southSample}

// holdingFlags say which holding a command works on.
type holdingFlags struct {
	Holding string `placeholder:"FOLDER|ZIP|ID"`
	Sample  string `placeholder:"main|south"`
}

// given tells whether a holding was named at all.
func (s holdingFlags) given() bool { return s.Holding != "" || s.Sample != "" }

// settle takes the one holding that is kept here when none was named and the
// other flags do not answer without one. Nothing is taken when there is none.
func (s *holdingFlags) settle(a *App, others ...string) error {
	if s.given() || !slices.Contains(others, "") {
		return nil
	}
	kept, err := a.keptHoldings("")
	if len(kept) == 1 {
		s.Holding = kept[0].ID
	}
	return err
}

// open reads the holding named, else the only one that is kept here. Warnings
// are said on the way.
func (s holdingFlags) open(a *App) (*holding.Holding, error) {
	var f flags
	sample := f.oneOf("--sample", s.Sample, samples)
	switch {
	case f.err() != nil:
		return nil, f.err()
	case s.Holding != "" && s.Sample != "":
		return nil, fault.New(fault.Conflict, "cli.holding_twice", nil)
	case s.Holding == "" && s.Sample == "":
		return a.onlyKept()
	case sample == mainSample:
		return desk.Sample("")
	case sample != "":
		return desk.Sample(sample)
	}
	if !isPath(s.Holding) {
		return a.openKept(s.Holding)
	}
	h, faults, warnings, err := desk.OpenHolding(s.Holding)
	if err != nil {
		return nil, err
	}
	a.warn(warnings)
	if len(faults) > 0 {
		return nil, faults
	}
	return h, nil
}

// findSpot finds the place of a question that needs a site and a file of its
// weather, each by its flag or out of a holding.
func (s *holdingFlags) findSpot(a *App, f *flags, site, flag, file string) (spot, error) {
	if err := s.settle(a, site, file); err != nil {
		return spot{}, err
	}
	if !s.given() {
		f.need("--site", site)
		f.need(flag, file)
	}
	if err := f.err(); err != nil {
		return spot{}, err
	}
	return s.spot(a, f, site)
}

// spot is the place a question is asked for, with the holding's weather there
// when it comes from a holding.
type spot struct {
	site    desk.Site
	weather *holding.WeatherSource
}

// spot finds the place: --site as coordinates, or the name of a site in the
// holding, or the holding's first site.
func (s holdingFlags) spot(a *App, f *flags, site string) (spot, error) {
	if !s.given() {
		if site = f.need("--site", site); site == "" {
			return spot{}, f.err()
		}
		return spot{site: f.site(site)}, f.err()
	}
	h, err := s.open(a)
	if err != nil {
		return spot{}, err
	}
	found, err := namedSite(h, site)
	if err != nil {
		return spot{}, err
	}
	out := spot{site: found.Location, weather: weatherOf(h, found.Weather)}
	if looksLikeSite(site) {
		out.site = f.site(site)
	}
	return out, f.err()
}

// namedSite finds a site of the holding by its id or name; nothing, or
// coordinates, give the first.
func namedSite(h *holding.Holding, name string) (place.Site, error) {
	names := make([]string, 0, len(h.Sites))
	for _, s := range h.Sites {
		if name == "" || looksLikeSite(name) || joined(s.ID) == joined(name) || joined(s.Name) == joined(name) {
			return s, nil
		}
		names = append(names, s.ID)
	}
	if len(names) == 0 {
		return place.Site{}, fault.New(fault.NotFound, "cli.no_sites", nil)
	}
	if meant := near.Names(name, names, 1); len(meant) > 0 {
		return place.Site{}, fault.New(fault.NotFound, "cli.no_such_site_meant",
			words.Args{"given": name, "meant": meant[0]})
	}
	return place.Site{}, fault.New(fault.NotFound, "cli.no_such_site", words.Args{"given": name, "names": names})
}

func weatherOf(h *holding.Holding, id string) *holding.WeatherSource {
	for i := range h.Weather {
		if h.Weather[i].ID == id {
			return &h.Weather[i]
		}
	}
	return nil
}
