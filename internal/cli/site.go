package cli

import (
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// site reads LAT,LON,ELEV in degrees, degrees and metres.
func (f *flags) site(given string) desk.Site {
	parts := strings.Split(given, ",")
	var numbers [3]float64
	ok := len(parts) == 3
	for i := 0; ok && i < 3; i++ {
		numbers[i], ok = decimal(parts[i])
	}
	if !ok {
		f.refuse(fault.Invalid, words.P("cli.site_shape", words.Args{"given": given}))
		return desk.Site{}
	}
	s := desk.Site{LatitudeDeg: numbers[0], LongitudeDeg: numbers[1], ElevationM: numbers[2]}
	f.faults = append(f.faults, s.Check()...)
	return s
}

// looksLikeSite tells coordinates from the name of a site in a holding.
func looksLikeSite(given string) bool { return strings.Contains(given, ",") }

// siteText says where a site is: 51.1 N, 1.2 W, 60 m.
func (a *App) siteText(s desk.Site) string {
	north, east := "cli.north", "cli.east"
	if s.LatitudeDeg < 0 {
		north = "cli.south"
	}
	if s.LongitudeDeg < 0 {
		east = "cli.west"
	}
	return a.Words.Text(words.P("cli.site", words.Args{
		"latitude":  words.P(north, words.Args{"degrees": max(s.LatitudeDeg, -s.LatitudeDeg)}),
		"longitude": words.P(east, words.Args{"degrees": max(s.LongitudeDeg, -s.LongitudeDeg)}),
		"elevation": s.ElevationM,
	}))
}
