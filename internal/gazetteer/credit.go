package gazetteer

import (
	"math"
	"strings"

	"garner/internal/words"
)

// Credit is the line that must stand wherever these normals are shown.
func Credit() words.Phrase { return words.P("gazetteer.credit", nil) }

// CreditOf is the line for the normals of one place.
func CreditOf(p Place) words.Phrase {
	args := words.Args{"place": p.Name, "period": p.Period}
	if strings.HasPrefix(p.ID, "ukmo-") {
		return words.P("gazetteer.credit_ukmo", args)
	}
	return words.P("gazetteer.credit_wmo", args)
}

// Notes tell in words what was done to the normals and what to mind.
func (a Adjustment) Notes() []words.Phrase {
	var out []words.Phrase
	higher := math.Round(a.HigherM)
	switch {
	case a.ShiftC != 0 && higher > 0:
		out = append(out, words.P("gazetteer.note_higher", words.Args{"m": higher, "c": math.Abs(a.ShiftC), "place": a.Station.Name}))
	case a.ShiftC != 0:
		out = append(out, words.P("gazetteer.note_lower", words.Args{"m": -higher, "c": math.Abs(a.ShiftC), "place": a.Station.Name}))
	}
	if a.RainFrom != nil {
		out = append(out, words.P("gazetteer.note_rain", words.Args{"place": a.Station.Name, "other": a.RainFrom.Name}))
	}
	if a.NoRain {
		out = append(out, words.P("gazetteer.note_no_rain", words.Args{"place": a.Station.Name}))
	}
	if a.Station.Short {
		out = append(out, words.P("gazetteer.note_short", words.Args{"place": a.Station.Name, "period": a.Station.Period}))
	}
	if a.Station.Doubtful {
		out = append(out, words.P("gazetteer.note_height", words.Args{"place": a.Station.Name}))
	}
	return out
}
