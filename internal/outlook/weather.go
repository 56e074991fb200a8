package outlook

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/season"
	"garner/internal/sun"
	"garner/internal/words"
)

// weatherYears is the weather of one source at one place under all futures.
type weatherYears struct {
	key     uint64
	first   cal.Date
	span    int
	seed    uint64
	futures *climate.Futures // nil until they are needed
	make    func() (*climate.Futures, error)
	days    [][]climate.Day // by future, filled as they are asked for
}

// prepare makes ready to fill; it is called before work is shared out.
func (w *weatherYears) prepare() (err error) {
	if w.futures == nil {
		w.futures, err = w.make()
	}
	return err
}

// fill makes the days of one future. Different futures may be filled at once.
func (w *weatherYears) fill(future int) {
	if w.days[future] == nil {
		w.days[future] = w.futures.Days(w.seed, future, w.key, w.first, w.span, nil)
	}
}

// laySites gives each site its weather, from memory where it is known.
func (j *job) laySites(m *Memory) error {
	j.sites = map[string]*siteWork{}
	for _, s := range j.Holding.Sites {
		source := j.Holding.WeatherAt(s)
		switch {
		case s.Weather == "":
			return fault.New(fault.NotFound, "outlook.weather_missing", words.Args{"site": s.Name})
		case source == nil:
			return fault.New(fault.NotFound, "outlook.weather_unknown", words.Args{"site": s.ID, "weather": s.Weather})
		}
		w, err := j.laySite(m, s, source)
		if err != nil {
			return err
		}
		j.sites[s.ID] = w
	}
	return nil
}

func (j *job) laySite(m *Memory, s place.Site, source *holding.WeatherSource) (*siteWork, error) {
	w := &siteWork{key: num.Key(source.ID), location: s.Location, source: source}
	ageD := j.Holding.ForecastAgeD(s.ID, j.Today)
	w.digest = j.digestWeather(m, s.Location, source, ageD)
	w.sky = season.NewSky(s.Location, j.first(), j.span())
	w.shades = newSiteShade(s, j.Holding.Features, m)
	if known, ok := m.weather.get(w.digest); ok {
		w.years = known
	} else {
		now := j.Today
		w.years = &weatherYears{key: w.key, first: j.first(), span: j.span(), seed: j.Seed, days: make([][]climate.Day, j.Years),
			make: func() (*climate.Futures, error) {
				return climate.NewFutures(s.Location, climate.Source{
					Normals: source.Normals, Record: source.Record, Forecast: source.Forecast, ForecastAgeD: ageD}, now)
			}}
		m.weather.put(w.digest, w.years)
	}
	for _, known := range j.weathers {
		if known == w.years {
			return w, nil
		}
	}
	j.weathers = append(j.weathers, w.years)
	return w, nil
}

// digestWeather hashes what a site's weather under all futures depends on.
func (j *job) digestWeather(m *Memory, at sun.Location, s *holding.WeatherSource, ageD int) num.Digest {
	d := num.NewDigester("weather")
	for _, v := range []float64{at.LatitudeDeg, at.LongitudeDeg, at.ElevationM} {
		d.Float(v)
	}
	d.Int(int64(j.Seed))
	d.Int(int64(j.Years))
	d.Int(int64(j.first()))
	d.Int(int64(j.span()))
	d.Int(int64(j.Today))
	d.Text(s.ID)
	if s.Normals != nil {
		for _, m := range s.Normals {
			d.Float(m.TMinC)
			d.Float(m.TMaxC)
			d.Float(m.RainMM)
			for _, v := range []climate.Maybe{m.SunH, m.RadiationMJ, m.HumidityPct, m.WindMS} {
				digestMaybe(d, v)
			}
		}
	}
	d.Digest(m.record(s.Record))
	d.Digest(m.record(s.Forecast))
	d.Int(int64(ageD))
	return d.Sum()
}

func digestRecord(d *num.Digester, r *climate.Record) {
	if r == nil {
		d.Int(-1)
		return
	}
	d.Int(int64(len(r.Days)))
	for i := range r.Days {
		o := &r.Days[i]
		d.Int(int64(o.Date))
		for _, v := range []climate.Maybe{o.TMinC, o.TMaxC, o.RainMM, o.SunH, o.RadiationMJ, o.HumidityPct, o.DewC, o.WindMS} {
			digestMaybe(d, v)
		}
	}
}

func digestMaybe(d *num.Digester, v climate.Maybe) {
	if v.Known {
		d.Float(v.Value)
		return
	}
	d.Text("-")
}
