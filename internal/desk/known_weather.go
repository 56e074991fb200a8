package desk

import (
	"errors"
	"slices"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/plan"
)

// withWeather leaves out of a holding the sites of which no weather is known, with all that
// lies on them: nothing can be forecast there, and the rest is told all the same. Where no
// site's is known the holding stays as it is, and asking of it is the fault that it was.
func withWeather(h *holding.Holding) (kept *holding.Holding, without []place.Site) {
	for _, s := range h.Sites {
		if h.WeatherAt(s) == nil {
			without = append(without, s)
		}
	}
	if len(without) == 0 || len(without) == len(h.Sites) {
		return h, without
	}
	out, gone := *h, map[string]bool{}
	dark := func(site string) bool {
		return slices.ContainsFunc(without, func(s place.Site) bool { return s.ID == site })
	}
	out.Sites, out.Beds, out.Plantings, out.Changes = nil, nil, nil, nil
	for _, s := range h.Sites {
		if !dark(s.ID) {
			out.Sites = append(out.Sites, s)
		}
	}
	for i := range h.Beds {
		if gone[h.Beds[i].ID] = dark(h.Beds[i].Site); !gone[h.Beds[i].ID] {
			out.Beds = append(out.Beds, h.Beds[i])
		}
	}
	resolved, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		return h, without // told where the plan is read
	}
	for _, p := range resolved {
		if !gone[p.Bed] {
			p.Plan = h.Plan
			out.Plantings = append(out.Plantings, p)
		}
	}
	return &out, without
}

// WithoutWeather names the sites of a holding of which no weather is known.
func WithoutWeather(h *holding.Holding) []string {
	names := []string{}
	_, without := withWeather(h)
	for _, s := range without {
		names = append(names, s.Name)
	}
	return names
}

// LacksWeather tells whether something was not worked out because of a site of which no
// weather is known.
func LacksWeather(err error) bool {
	var f *fault.Error
	return errors.As(err, &f) && slices.Contains([]string{"outlook.weather_missing", "outlook.weather_unknown", "desk.site_weather"}, f.Phrase.Key)
}

// Weatherless are the sites of the holding as it stands of which no weather is known, and
// whether that is all of them.
func (o *Office) Weatherless() (sites []place.Site, all bool, err error) {
	h, _, err := o.standing()
	if err != nil {
		return nil, false, err
	}
	_, sites = withWeather(h)
	return sites, len(sites) == len(h.Sites), nil
}

// askKnown is ask of the holding as it stands without the sites of which no weather is
// known.
func (o *Office) askKnown() (*asked, error) {
	h, version, err := o.standing()
	if err != nil {
		return nil, err
	}
	kept, without := withWeather(h)
	if len(without) == 0 {
		return o.ask(nil)
	}
	return o.askOf(&asked{sky: o.fetching.revision.Load(), holding: kept, version: version})
}
