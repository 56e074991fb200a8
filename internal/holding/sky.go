package holding

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/observed"
	"garner/internal/place"
)

// Sky is what is known of the weather over a site beyond its source: readings
// laid over the record, and the newest forecast.
type Sky struct {
	observed.Days
	Forecast *climate.Record
	Made     cal.Date // the day the forecast was made; None: not known
}

// Observe joins what is known of the weather at each site. It is called when the
// holding was read and when a forecast was fetched; WeatherAt answers from it.
func (h *Holding) Observe() {
	h.Skies = map[string]*Sky{}
	for i := range h.Sites {
		if sky := h.skyOf(&h.Sites[i]); sky != nil {
			h.Skies[h.Sites[i].ID] = sky
		}
	}
}

// skyOf is nil where the site's source tells all there is.
func (h *Holding) skyOf(s *place.Site) *Sky {
	source := h.sourceOf(s.Weather)
	if source == nil {
		source = &WeatherSource{}
	}
	var readings []observed.Reading
	for _, r := range h.WeatherReadings {
		if r.Site == s.ID {
			readings = append(readings, r)
		}
	}
	forecasts := h.forecastsOf(s)
	if len(readings) == 0 && len(forecasts) == 0 {
		return nil
	}
	sky := &Sky{Days: observed.Join(source.Record, readings), Forecast: source.Forecast, Made: cal.None}
	if len(forecasts) > 0 {
		if source.Forecast != nil {
			forecasts = append(forecasts, observed.Forecast{Made: cal.None, Days: source.Forecast.Days})
		}
		sky.Forecast, sky.Made = observed.Ahead(forecasts...)
	}
	return sky
}

// forecastsOf are those typed and fetched for a site.
func (h *Holding) forecastsOf(s *place.Site) []observed.Forecast {
	var out []observed.Forecast
	told := map[cal.Date]int{}
	for i := range h.Foretold {
		f := &h.Foretold[i]
		if f.Site != s.ID {
			continue
		}
		at, known := told[f.Told]
		if !known {
			at = len(out)
			told[f.Told] = at
			out = append(out, observed.Forecast{Made: f.Told})
		}
		out[at].Days = append(out[at].Days, f.Observation(s.Location.LatitudeDeg))
	}
	for i := range h.Addresses {
		if f, known := h.Fetched[h.Addresses[i].ID]; known && h.Addresses[i].Site == s.ID && h.Addresses[i].On == observed.Yes {
			out = append(out, f)
		}
	}
	return out
}

func (h *Holding) sourceOf(id string) *WeatherSource {
	for i := range h.Weather {
		if h.Weather[i].ID == id {
			return &h.Weather[i]
		}
	}
	return nil
}

// ForecastAgeD is how many days ago the forecast of a site was made [d]; 0 where that
// is not known.
func (h *Holding) ForecastAgeD(site string, today cal.Date) int {
	if sky := h.Skies[site]; sky != nil && sky.Made.IsSet() {
		return max(0, int(today-sky.Made))
	}
	return 0
}

// WeatherAt is what is known of the weather at a site: its source, with readings
// laid over the record and the newest forecast. Nil when its source is not there.
func (h *Holding) WeatherAt(s place.Site) *WeatherSource {
	source := h.sourceOf(s.Weather)
	sky := h.Skies[s.ID]
	if source == nil || sky == nil {
		return source
	}
	own := *source
	own.Record, own.Forecast = sky.Record, sky.Forecast
	return &own
}
