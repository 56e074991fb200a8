package exchange

import (
	"garner/internal/climate"
	"garner/internal/holding"
)

// The names of weather files are written only when there are figures to write.
var weatherSheet = rowsOf[holding.WeatherSource]{
	table: tableNamed("weather"),
	columns: []column[holding.WeatherSource]{
		text("id", func(w *holding.WeatherSource) *string { return &w.ID }),
		text("name", func(w *holding.WeatherSource) *string { return &w.Name }),
		text("source", func(w *holding.WeatherSource) *string { return &w.Source }),
		figures("normals", "weather/", func(w *holding.WeatherSource) *string { return &w.NormalFile },
			func(w *holding.WeatherSource) bool { return w.Own().Normals != nil }, idOfSource),
		figures("record", "weather/", func(w *holding.WeatherSource) *string { return &w.RecordFile },
			func(w *holding.WeatherSource) bool { return hasDays(w.Own().Record) }, idOfSource),
		figures("forecast", "weather/", func(w *holding.WeatherSource) *string { return &w.FcastFile },
			func(w *holding.WeatherSource) bool { return hasDays(w.Forecast) }, idOfSource),
		figures("hourly", "weather/", func(w *holding.WeatherSource) *string { return &w.HourFile },
			func(w *holding.WeatherSource) bool { return len(w.Own().Hours) > 0 }, idOfSource),
	},
	list: func(h *holding.Holding) []holding.WeatherSource { return h.Weather },
	put:  func(h *holding.Holding, rows []holding.WeatherSource) { h.Weather = rows },
}

func idOfSource(w *holding.WeatherSource) string { return w.ID }

func hasDays(r *climate.Record) bool { return r != nil && len(r.Days) > 0 }

// figures is the column of a file's name; figures without one get a name of their
// own.
func figures[T any](kind, folder string, at func(*T) *string, known func(*T) bool, id func(*T) string) column[T] {
	c := text(kind, at)
	c.get = func(e *T) string {
		switch {
		case !known(e):
			return ""
		case *at(e) == "":
			return folder + id(e) + "-" + kind + ".csv"
		}
		return *at(e)
	}
	return c
}
