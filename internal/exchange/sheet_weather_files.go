package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
)

// The names of weather files are written only when there are figures to write.
var weatherFilesSheet = rowsOf[holding.WeatherFile]{
	table: tableNamed("weather_files"),
	blank: holding.WeatherFile{Added: cal.None},
	columns: []column[holding.WeatherFile]{
		text("id", func(f *holding.WeatherFile) *string { return &f.ID }),
		text("weather", func(f *holding.WeatherFile) *string { return &f.Weather }),
		text("name", func(f *holding.WeatherFile) *string { return &f.Name }),
		text("format", func(f *holding.WeatherFile) *string { return &f.Format }),
		text("station", func(f *holding.WeatherFile) *string { return &f.Station }),
		date("added", func(f *holding.WeatherFile) *cal.Date { return &f.Added }),
		whole("left_out", func(f *holding.WeatherFile) *int { return &f.LeftOut }),
		figures("days", "weather/file-", func(f *holding.WeatherFile) *string { return &f.Days },
			func(f *holding.WeatherFile) bool { return hasDays(f.Record) },
			idOfFile),
		figures("typical", "weather/file-", func(f *holding.WeatherFile) *string { return &f.Typical },
			func(f *holding.WeatherFile) bool { return f.Normals != nil },
			idOfFile),
		figures("hourly", "weather/file-", func(f *holding.WeatherFile) *string { return &f.Hourly },
			func(f *holding.WeatherFile) bool { return len(f.Hours) > 0 },
			idOfFile),
	},
	list: func(h *holding.Holding) []holding.WeatherFile { return h.Files },
	put:  func(h *holding.Holding, rows []holding.WeatherFile) { h.Files = rows },
}

func idOfFile(f *holding.WeatherFile) string { return f.ID }

var columnMapsSheet = rowsOf[holding.ColumnMap]{
	table: tableNamed("column_maps"),
	columns: []column[holding.ColumnMap]{
		text("id", func(m *holding.ColumnMap) *string { return &m.ID }),
		text("name", func(m *holding.ColumnMap) *string { return &m.Name }),
		text("headings", func(m *holding.ColumnMap) *string { return &m.Headings }),
		text("date", func(m *holding.ColumnMap) *string { return &m.Date }),
		text("date_order", func(m *holding.ColumnMap) *string { return &m.DateOrder }),
		text("tmin", func(m *holding.ColumnMap) *string { return &m.TMin }),
		text("tmax", func(m *holding.ColumnMap) *string { return &m.TMax }),
		text("dew", func(m *holding.ColumnMap) *string { return &m.Dew }),
		text("temp_unit", func(m *holding.ColumnMap) *string { return &m.TempUnit }),
		text("rain", func(m *holding.ColumnMap) *string { return &m.Rain }),
		text("rain_unit", func(m *holding.ColumnMap) *string { return &m.RainUnit }),
		text("sun", func(m *holding.ColumnMap) *string { return &m.Sun }),
		text("sun_unit", func(m *holding.ColumnMap) *string { return &m.SunUnit }),
		text("radiation", func(m *holding.ColumnMap) *string { return &m.Radiation }),
		text("radiation_unit", func(m *holding.ColumnMap) *string { return &m.RadiationUnit }),
		text("humidity", func(m *holding.ColumnMap) *string { return &m.Humidity }),
		text("wind", func(m *holding.ColumnMap) *string { return &m.Wind }),
		text("wind_unit", func(m *holding.ColumnMap) *string { return &m.WindUnit }),
		number("wind_height_m", func(m *holding.ColumnMap) *float64 { return &m.WindHeightM }),
		text("missing", func(m *holding.ColumnMap) *string { return &m.Missing }),
	},
	list: func(h *holding.Holding) []holding.ColumnMap { return h.Maps },
	put:  func(h *holding.Holding, rows []holding.ColumnMap) { h.Maps = rows },
}
