package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/risk"
)

const (
	riskFutures = 40 // looked at for odds
	riskLead    = 15 // days before the season that rules over several days look back on
)

// riskWork is what the views of risk are made of.
type riskWork struct {
	a         *asked
	n         *namer
	book      *risk.Book
	today     cal.Date
	plantings []plan.Planting // of the plan in force, by date
	over      func(planting string) cal.Date
	gone      map[string]bool
	sites     []*riskSite
}

// riskSite is a site with the weather of its season.
type riskSite struct {
	site    place.Site
	south   bool
	start   cal.Date // of the growing year
	source  *holding.WeatherSource
	weather *risk.Weather   // observed, from the lead on to yesterday
	ahead   *risk.Weather   // the same and the days of the forecast, whose hours are made; nil: there is no forecast
	origins []RiskOrigin    // of the hours of the season
	futures [][]climate.Day // from the start to the end of the next growing year
	beds    map[string]*place.Bed
}

// newRiskWork readies the rules, the plantings and the weather of a holding's sites.
func newRiskWork(a *asked, over func(string) cal.Date) (*riskWork, error) {
	w, err := riskWorkOf(a, over)
	if err != nil {
		return nil, err
	}
	for _, s := range a.holding.Sites {
		site, err := w.site(s)
		if err != nil {
			return nil, err
		}
		w.sites = append(w.sites, site)
	}
	return w, nil
}

// riskWorkOf readies the rules and the plantings alone. over tells when a planting is
// forecast to be over; it may be nil.
func riskWorkOf(a *asked, over func(string) cal.Date) (*riskWork, error) {
	book, err := risk.Load()
	if err != nil {
		return nil, err
	}
	w := &riskWork{a: a, n: newNamer(a), book: book, today: a.setting.Today, over: over, gone: clearedBy(a.holding.Records, a.setting.Today)}
	plantings, faults := plan.Resolve(a.holding.Plans, a.holding.Plantings, a.holding.Changes, a.holding.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	w.plantings = plantings
	slices.SortStableFunc(w.plantings, func(a, b plan.Planting) int { return int(a.Date - b.Date) })
	return w, nil
}

// site gathers the weather of a site's season.
func (w *riskWork) site(s place.Site) (*riskSite, error) {
	out := &riskSite{site: s, south: s.Location.LatitudeDeg < 0, weather: &risk.Weather{}, beds: map[string]*place.Bed{}}
	out.start = risk.YearStart(w.today, out.south)
	h := w.a.holding
	for i := range h.Beds {
		if h.Beds[i].Site == s.ID {
			out.beds[h.Beds[i].ID] = &h.Beds[i]
		}
	}
	source := h.WeatherAt(s)
	if source == nil || len(out.beds) == 0 {
		return out, nil
	}
	out.source = source
	hours := siteHours(h, s.ID, source)
	out.weather = risk.Join(hours, source.Record, out.start-riskLead, w.today)
	out.origins = origins(h, s.ID, source, out.start, w.today)
	if last := lastForecast(source.Forecast, w.today); last.IsSet() {
		out.ahead = risk.Join(hoursBefore(hours, w.today), forecastAfter(source, w.today), out.start-riskLead, last+1)
	}
	if out.source.Normals == nil && out.source.Record == nil {
		return out, nil
	}
	f, err := climate.NewFutures(s.Location, climate.Source{Normals: out.source.Normals, Forecast: source.Forecast, ForecastAgeD: h.ForecastAgeD(s.ID, w.today),
		Record: risk.Daily(source.Record, hours)}, w.today)
	if err != nil {
		return nil, err
	}
	end := risk.NextYear(risk.NextYear(w.today, out.south), out.south)
	for i := range riskFutures {
		out.futures = append(out.futures, f.Days(pageSeed, i, num.Key(out.source.ID), out.start, int(end-out.start), nil))
	}
	return out, nil
}

// observed tells what is on record of the season.
func (s *riskSite) observed(today cal.Date) RiskWeather {
	v := RiskWeather{Site: s.site.ID, SiteName: s.site.Name, From: s.start, Last: cal.None, Futures: len(s.futures), Origins: s.origins}
	if s.source != nil {
		v.Source = s.source.ID
	}
	for i := range s.weather.Days {
		d := &s.weather.Days[i]
		if d.Date < s.start {
			continue
		}
		v.Last = d.Date
		switch {
		case !d.Made:
			v.Hours++
		case d.Guessed:
			v.Made, v.Guessed = v.Made+1, v.Guessed+1
		default:
			v.Made++
		}
	}
	v.Missing = int(today-s.start) - v.Hours - v.Made
	if v.Last.IsSet() {
		v.Behind = int(today - v.Last)
	}
	return v
}

// grade is what the readings of a rule over the season are made from.
func (s *riskSite) grade(r *risk.Rule, from cal.Date) RiskGrade {
	hours, made, guessed := 0, 0, 0
	for i := range s.weather.Days {
		d := &s.weather.Days[i]
		switch {
		case d.Date < from:
		case !d.Made:
			hours++
		case d.Guessed && r.Humid():
			guessed++
		default:
			made++
		}
	}
	switch {
	case hours+made+guessed == 0:
		return GradeNone
	case guessed > 0:
		return GradeGuessed
	case !r.Hourly || hours == 0:
		return GradeDays
	case made > 0:
		return GradeMixed
	}
	return GradeHours
}
