package outlook

import (
	"sync"

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
	making  sync.Mutex
	futures *climate.Futures // nil until prepare was called
	make    func() (*climate.Futures, error)
	days    []oneWeather // by future, of those that replay the same year only the first
}

// oneWeather is the weather of a future, made when it is asked for.
type oneWeather struct {
	once sync.Once
	days []climate.Day
}

// early prepares weather that is sure to be asked for while the table is laid out. What
// goes wrong goes wrong again for who asks.
func (w *weatherYears) early() { _ = safely(0, func(int) error { return w.prepare() }) }

// prepare makes the weather ready to be asked for.
func (w *weatherYears) prepare() (err error) {
	w.making.Lock()
	defer w.making.Unlock()
	if w.futures == nil {
		w.futures, err = w.make()
	}
	return err
}

// of is the weather of a future, which is not to be changed. It may be asked for from
// many places at once, once prepare was called.
func (w *weatherYears) of(future int) []climate.Day {
	o := &w.days[w.like(future)]
	o.once.Do(func() { o.days = w.futures.Days(w.seed, future, w.key, w.first, w.span, nil) })
	return o.days
}

// like is the first future that has the same weather as one.
func (w *weatherYears) like(future int) int {
	if n := w.futures.Distinct(); n > 0 {
		return future % n
	}
	return future
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
	now := j.Today
	w.years = m.weatherOf(w.digest, func() *weatherYears {
		made := &weatherYears{key: w.key, first: j.first(), span: j.span(), seed: j.Seed, days: make([]oneWeather, j.Years),
			make: func() (*climate.Futures, error) {
				return climate.NewFutures(s.Location, climate.Source{
					Normals: source.Normals, Record: source.Record, Forecast: source.Forecast, ForecastAgeD: ageD}, now)
			}}
		go made.early()
		return made
	})
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
