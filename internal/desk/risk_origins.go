package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/risk"
)

// HourOrigin is where hours come from.
type HourOrigin string

// The origins of hours, the best first.
const (
	HoursPasted HourOrigin = "pasted"
	HoursHeard  HourOrigin = "instrument"
	HoursOfFile HourOrigin = "file"
)

// RiskOrigin is one origin of the hours of a season: of every hour the first origin
// that knows it counts.
type RiskOrigin struct {
	From HourOrigin
	Name string // of the file, with its station where it tells one
	Days int    // of the season, that count by its hours alone
}

// siteHours are the hours that are known at a site, the best first: what was pasted,
// what its instruments sent, then what files tell of the station.
func siteHours(h *holding.Holding, site string, source *holding.WeatherSource) []climate.Hour {
	return climate.LayHours(source.Own().Hours, h.Heard[site], source.Hours)
}

// origins tells where the hours of a site's season come from.
func origins(h *holding.Holding, site string, source *holding.WeatherSource, from, until cal.Date) []RiskOrigin {
	var out []RiskOrigin
	add := func(o HourOrigin, name string, hours []climate.Hour) {
		if n := risk.CountedDays(hours, from, until); n > 0 {
			out = append(out, RiskOrigin{o, name, n})
		}
	}
	add(HoursPasted, "", source.Own().Hours)
	add(HoursHeard, "", h.Heard[site])
	for i := range h.Files {
		if f := &h.Files[i]; f.Weather == source.ID {
			name := f.Name
			if f.Station != "" {
				name += ", " + f.Station
			}
			add(HoursOfFile, name, f.Hours)
		}
	}
	slices.SortStableFunc(out, func(a, b RiskOrigin) int { return b.Days - a.Days })
	return out
}
