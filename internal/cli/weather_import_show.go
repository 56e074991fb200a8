package cli

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
)

// weatherFileRow is what was found in a file, for the JSON.
func (a *App) weatherFileRow(w *desk.WeatherFound) weatherFileRow {
	row := weatherFileRow{File: w.File, Format: w.Format, Station: w.StationName(), LatitudeDeg: known(w.Station.LatitudeDeg),
		LongitudeDeg: known(w.Station.LongitudeDeg), ElevationM: known(w.Station.ElevationM), Days: w.Days, MissingDays: w.Missing,
		TypicalYear: w.Typical, Rows: w.Rows, Unfit: a.faultRows(w.Wrong), Refused: a.faultRows(w.Refused),
		Doubtful: a.faultRows(w.Doubtful), Warnings: a.faultRows(w.Warnings)}
	if w.First != cal.None && w.Days > 0 {
		row.First, row.Last = &w.First, &w.Last
	}
	return row
}

func known(m climate.Maybe) *float64 {
	if !m.Known {
		return nil
	}
	return &m.Value
}

// showWeatherFound writes what was found in a file. What is wrong in it is said
// too, unless the refusal will tell it.
func (a *App) showWeatherFound(w *desk.WeatherFound, aloud bool) {
	for _, p := range w.Says() {
		a.say(p)
	}
	var odd fault.List
	if aloud {
		odd = append(append(append(odd, w.Wrong...), w.Refused...), w.Doubtful...)
	}
	a.warn(append(odd, w.Warnings...))
}
