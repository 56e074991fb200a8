package exchange

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/observed"
)

var weatherReadingsSheet = rowsOf[observed.Reading]{
	table: tableNamed("weather_readings"),
	blank: observed.Reading{Date: cal.None, Since: cal.None},
	columns: []column[observed.Reading]{
		text("id", func(r *observed.Reading) *string { return &r.ID }),
		text("site", func(r *observed.Reading) *string { return &r.Site }),
		text("bed", func(r *observed.Reading) *string { return &r.Bed }),
		date("date", func(r *observed.Reading) *cal.Date { return &r.Date }),
		text("at", func(r *observed.Reading) *string { return &r.At }),
		date("since", func(r *observed.Reading) *cal.Date { return &r.Since }),
		maybe("rain_mm", func(r *observed.Reading) *climate.Maybe { return &r.RainMM }),
		maybe("tmin_c", func(r *observed.Reading) *climate.Maybe { return &r.TMinC }),
		maybe("tmax_c", func(r *observed.Reading) *climate.Maybe { return &r.TMaxC }),
		maybe("rh_pct", func(r *observed.Reading) *climate.Maybe { return &r.HumidityPct }),
		maybe("rad_mj_m2", func(r *observed.Reading) *climate.Maybe { return &r.RadiationMJ }),
		maybe("wind_ms", func(r *observed.Reading) *climate.Maybe { return &r.WindMS }),
		text("by", func(r *observed.Reading) *string { return &r.By }),
		text("note", func(r *observed.Reading) *string { return &r.Note }),
	},
	list: func(h *holding.Holding) []observed.Reading { return h.WeatherReadings },
	put:  func(h *holding.Holding, rows []observed.Reading) { h.WeatherReadings = rows },
}

var forecastsSheet = rowsOf[observed.Foretold]{
	table: tableNamed("forecasts"),
	blank: observed.Foretold{Date: cal.None, Told: cal.None},
	columns: []column[observed.Foretold]{
		text("id", func(f *observed.Foretold) *string { return &f.ID }),
		text("site", func(f *observed.Foretold) *string { return &f.Site }),
		date("date", func(f *observed.Foretold) *cal.Date { return &f.Date }),
		maybe("tmin_c", func(f *observed.Foretold) *climate.Maybe { return &f.TMinC }),
		maybe("tmax_c", func(f *observed.Foretold) *climate.Maybe { return &f.TMaxC }),
		maybe("rain_mm", func(f *observed.Foretold) *climate.Maybe { return &f.RainMM }),
		text("wind", func(f *observed.Foretold) *string { return &f.Wind }),
		text("sky", func(f *observed.Foretold) *string { return &f.Sky }),
		date("told", func(f *observed.Foretold) *cal.Date { return &f.Told }),
	},
	list: func(h *holding.Holding) []observed.Foretold { return h.Foretold },
	put:  func(h *holding.Holding, rows []observed.Foretold) { h.Foretold = rows },
}

var addressesSheet = rowsOf[observed.Address]{
	table: tableNamed("addresses"),
	columns: []column[observed.Address]{
		text("id", func(a *observed.Address) *string { return &a.ID }),
		text("site", func(a *observed.Address) *string { return &a.Site }),
		text("url", func(a *observed.Address) *string { return &a.URL }),
		text("layout", func(a *observed.Address) *string { return &a.Layout }),
		text("map", func(a *observed.Address) *string { return &a.Map }),
		whole("every_h", func(a *observed.Address) *int { return &a.EveryH }),
		text("on", func(a *observed.Address) *string { return &a.On }),
	},
	list: func(h *holding.Holding) []observed.Address { return h.Addresses },
	put:  func(h *holding.Holding, rows []observed.Address) { h.Addresses = rows },
}

var sensorsSheet = rowsOf[observed.Sensor]{
	table: tableNamed("sensors"),
	columns: []column[observed.Sensor]{
		text("id", func(s *observed.Sensor) *string { return &s.ID }),
		text("name", func(s *observed.Sensor) *string { return &s.Name }),
		text("site", func(s *observed.Sensor) *string { return &s.Site }),
		text("bed", func(s *observed.Sensor) *string { return &s.Bed }),
		text("topic", func(s *observed.Sensor) *string { return &s.Topic }),
		text("field", func(s *observed.Sensor) *string { return &s.Field }),
		text("quantity", func(s *observed.Sensor) *string { return &s.Quantity }),
		text("unit", func(s *observed.Sensor) *string { return &s.Unit }),
		text("time", func(s *observed.Sensor) *string { return &s.Time }),
	},
	list: func(h *holding.Holding) []observed.Sensor { return h.Sensors },
	put:  func(h *holding.Holding, rows []observed.Sensor) { h.Sensors = rows },
}

// maybe is a number that may be missing; 0 is a value like any other.
func maybe[T any](name string, at func(*T) *climate.Maybe) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, read numberReader) bool {
			v, ok := read(cell)
			*at(e) = climate.Maybe{Value: v, Known: ok}
			return ok
		},
		get: func(e *T) string {
			if !at(e).Known {
				return ""
			}
			return writeNumber(at(e).Value)
		},
		keep: func(e *T) bool { return at(e).Known },
	}
}
