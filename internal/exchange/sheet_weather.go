package exchange

import (
	"garner/internal/holding"
)

// The names of weather files are written only when there are figures to write.
var weatherSheet = rowsOf[holding.WeatherSource]{
	table: tableNamed("weather"),
	columns: []column[holding.WeatherSource]{
		text("id", func(w *holding.WeatherSource) *string { return &w.ID }),
		text("name", func(w *holding.WeatherSource) *string { return &w.Name }),
		text("source", func(w *holding.WeatherSource) *string { return &w.Source }),
		weatherFile("normals", func(w *holding.WeatherSource) *string { return &w.NormalFile },
			func(w *holding.WeatherSource) bool { return w.Normals != nil }),
		weatherFile("record", func(w *holding.WeatherSource) *string { return &w.RecordFile },
			func(w *holding.WeatherSource) bool { return w.Record != nil && len(w.Record.Days) > 0 }),
		weatherFile("forecast", func(w *holding.WeatherSource) *string { return &w.FcastFile },
			func(w *holding.WeatherSource) bool { return w.Forecast != nil && len(w.Forecast.Days) > 0 }),
		weatherFile("hourly", func(w *holding.WeatherSource) *string { return &w.HourFile },
			func(w *holding.WeatherSource) bool { return len(w.Hours) > 0 }),
	},
	list: func(h *holding.Holding) []holding.WeatherSource { return h.Weather },
	put:  func(h *holding.Holding, rows []holding.WeatherSource) { h.Weather = rows },
}

// weatherFile gives figures without a file name one of their own.
func weatherFile(kind string, at func(*holding.WeatherSource) *string, known func(*holding.WeatherSource) bool) column[holding.WeatherSource] {
	c := text(kind, at)
	c.get = func(w *holding.WeatherSource) string {
		switch {
		case !known(w):
			return ""
		case *at(w) == "":
			return "weather/" + w.ID + "-" + kind + ".csv"
		}
		return *at(w)
	}
	return c
}
