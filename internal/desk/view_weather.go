package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/water"
	"garner/internal/words"
)

// weatherBack is how many days on record are shown.
const weatherBack = 14

// degreeBaseC is the base of the degree-days that are shown [C]: under it most of
// what is grown outdoors in cool places stands still.
const degreeBaseC = 5

// WeatherView is what is on record of the weather at a site, and the forecast.
type WeatherView struct {
	Today     cal.Date       `json:"today"`
	Site      string         `json:"site"`
	SiteName  string         `json:"site_name"`
	Source    string         `json:"source"` // of the normals and the record
	Sites     []WeatherSite  `json:"-"`      // all there are
	Normals   bool           `json:"-"`      // what is usual is known
	Last      []WeatherDay   `json:"days"`   // the last days up to yesterday, and today where anything was read
	Ahead     []WeatherDay   `json:"forecast"`
	Made      *cal.Date      `json:"forecast_made"`
	Spans     []WeatherSpan  `json:"spans"` // the same days in sum, and the season
	Under     []UnderReading `json:"under_covers"`
	Readings  []ReadingLine  `json:"readings"`
	LastKnown *cal.Date      `json:"last_recorded"` // before today; nil: none
	Addresses []AddressState `json:"addresses"`
	Sensors   []SensorState  `json:"sensors"`
	Lead      []words.Phrase `json:"-"`
	location  place.Site
}

// WeatherSite is a site to look at.
type WeatherSite struct{ ID, Name string }

// WeatherDay is one day as it is known, and what is usual on it.
type WeatherDay struct {
	Date        cal.Date        `json:"date"`
	TMinC       *float64        `json:"tmin_c"`
	TMaxC       *float64        `json:"tmax_c"`
	RainMM      *float64        `json:"rain_mm"`
	ET0MM       *float64        `json:"et0_mm"`
	Warmth      observed.Origin `json:"warmth_from,omitempty"`
	Rain        observed.Origin `json:"rain_from,omitempty"`
	UsualMinC   float64         `json:"usual_tmin_c"`
	UsualMaxC   float64         `json:"usual_tmax_c"`
	UsualRainMM float64         `json:"usual_rain_mm"`
	usualET0MM  float64
}

// Ahead tells a day of a forecast.
func (d *WeatherDay) Ahead() bool {
	return d.Warmth == observed.Forecasted || d.Rain == observed.Forecasted
}

// Frost tells a night under 0 C.
func (d *WeatherDay) Frost() bool { return d.TMinC != nil && *d.TMinC < 0 }

// WeatherView looks at the weather of a site; "" is the first.
func (o *Office) WeatherView(site string) (*WeatherView, error) {
	h, _, err := o.standing()
	if err != nil {
		return nil, err
	}
	v, err := weatherView(h, site)
	if err != nil {
		return nil, err
	}
	v.Addresses = o.addressStates(h, v.Site)
	v.Sensors, err = o.sensorStates(h, v.Site)
	return v, err
}

// Weather tells what is on record of the weather at a site of a holding.
func Weather(h *holding.Holding, site string) (*WeatherView, error) { return weatherView(h, site) }

func weatherView(h *holding.Holding, site string) (*WeatherView, error) {
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	at := -1
	v := &WeatherView{Today: now, Last: []WeatherDay{}, Ahead: []WeatherDay{}, Addresses: []AddressState{}, Sensors: []SensorState{}}
	for i, s := range h.Sites {
		v.Sites = append(v.Sites, WeatherSite{s.ID, s.Name})
		if at < 0 && (site == "" || site == s.ID) {
			at = i
		}
	}
	if at < 0 {
		return nil, fault.New(fault.NotFound, "desk.site_unknown", words.Args{"site": site})
	}
	v.location = h.Sites[at]
	v.Site, v.SiteName = v.location.ID, v.location.Name
	v.lay(h)
	v.Under = underReadings(h, v.location)
	v.Readings = readingLines(h, v.Site)
	v.Lead = v.lead()
	return v, nil
}

// lay lays out the days behind and ahead, and sums them.
func (v *WeatherView) lay(h *holding.Holding) {
	source := h.WeatherAt(v.location)
	if source == nil {
		source = &holding.WeatherSource{}
	}
	v.Source = source.Source
	c := dayCounter{site: v.location, air: water.NewPlace(v.location.Location.ElevationM), days: observationsOf(source.Record), from: map[cal.Date]observed.Origins{}}
	if sky := h.Skies[v.Site]; sky != nil {
		if sky.From != nil {
			c.from = sky.From
		}
		if sky.Made.IsSet() {
			v.Made = &sky.Made
		}
	}
	if normals, err := normalsAt(h, v.location); err == nil {
		c.usual, v.Normals = normals.Usual(), true
	}
	for d := v.Today - weatherBack; d < v.Today; d++ {
		v.Last = append(v.Last, c.day(d, c.days[d]))
	}
	if source.Record != nil {
		for i := len(source.Record.Days) - 1; i >= 0; i-- {
			if d := source.Record.Days[i].Date; d < v.Today {
				v.LastKnown = &d
				break
			}
		}
	}
	if source.Forecast != nil {
		for i := range source.Forecast.Days {
			o := &source.Forecast.Days[i]
			if o.Date >= v.Today && (v.Made == nil || o.Date < *v.Made+observed.MostAhead) {
				day := c.day(o.Date, o)
				day.Warmth, day.Rain = observed.Forecasted, observed.Forecasted
				v.Ahead = append(v.Ahead, day)
			}
		}
	}
	if day := c.day(v.Today, c.days[v.Today]); day.known() && (len(v.Ahead) == 0 || v.Ahead[0].Date > v.Today) {
		v.Last = append(v.Last, day)
	}
	v.Spans = []WeatherSpan{c.span("days", v.Today-weatherBack, v.Today), c.span("season", seasonStart(v.Today), v.Today)}
}

// seasonStart is the 1 April or 1 October before a day: the halves into which
// the year is parted for water.
func seasonStart(d cal.Date) cal.Date {
	year, month, _ := d.YMD()
	switch {
	case month >= 10:
		return cal.Of(year, 10, 1)
	case month >= 4:
		return cal.Of(year, 4, 1)
	}
	return cal.Of(year-1, 10, 1)
}

func observationsOf(r *climate.Record) map[cal.Date]*climate.Observation {
	out := map[cal.Date]*climate.Observation{}
	if r == nil {
		return out
	}
	// The last two years are all that is asked for.
	for i := max(0, len(r.Days)-800); i < len(r.Days); i++ {
		out[r.Days[i].Date] = &r.Days[i]
	}
	return out
}
