package cli

import (
	"strings"

	"garner/internal/desk"
	"garner/internal/words"
)

// weatherShowCommand tells what is on record of the weather at a site, and what is
// forecast.
type weatherShowCommand struct {
	Site string `placeholder:"ID"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk and shows the answer.
func (c *weatherShowCommand) Run(a *App) error {
	v, err := c.view(a)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(v)
	}
	a.showWeather(v)
	return nil
}

// view is of a holding that is kept here with how fetching and instruments stand,
// else of what its files say.
func (c *weatherShowCommand) view(a *App) (*desk.WeatherView, error) {
	id := c.Holding
	if c.Sample == "" && !isPath(id) {
		if id == "" {
			kept, err := a.keptHoldings("")
			if err == nil && len(kept) == 1 {
				id = kept[0].ID
			}
		}
		if id != "" {
			return c.keptView(a, id)
		}
	}
	h, err := c.open(a)
	if err != nil {
		return nil, err
	}
	site, err := namedSite(h, c.Site)
	if err != nil {
		return nil, err
	}
	return desk.Weather(h, site.ID)
}

func (c *weatherShowCommand) keptView(a *App, id string) (v *desk.WeatherView, err error) {
	if _, err := a.openKept(id); err != nil { // with all it says of ids that are not there
		return nil, err
	}
	err = a.withKept(id, func(o *desk.Office) error {
		h, err := o.Holding()
		if err != nil {
			return err
		}
		site, err := namedSite(h, c.Site)
		if err != nil {
			return err
		}
		v, err = o.WeatherView(site.ID)
		return err
	})
	return v, err
}

// showWeather writes the sentences, the days and how fetching and instruments stand.
func (a *App) showWeather(v *desk.WeatherView) {
	a.say(words.P("cli.weather_title", words.Args{"site": v.SiteName, "today": v.Today}))
	a.gap()
	for _, p := range v.Lead {
		a.say(words.P("cli.sentence", words.Args{"text": strings.ReplaceAll(a.Words.Text(p), "**", "")}))
	}
	a.gap()
	f := a.Words.Format()
	figure := func(x *float64) string {
		if x == nil {
			return "–"
		}
		return f.Number(*x, 1)
	}
	g := &grid{right: []bool{false, true, true, true, true, false}}
	g.add(a.head("cli.column_date"), a.head("cli.column_tmin"), a.head("cli.column_tmax"), a.head("cli.column_rain_mm"), a.head("cli.column_et0_mm"), a.head("cli.column_known_from"))
	for _, days := range [][]desk.WeatherDay{v.Last, v.Ahead} {
		for i := range days {
			d := &days[i]
			from := d.Warmth
			if from == "" {
				from = d.Rain
			}
			g.add(f.Date(d.Date), figure(d.TMinC), figure(d.TMaxC), figure(d.RainMM), figure(d.ET0MM), string(from))
		}
	}
	g.write(a)
	a.gap()
	for i := range v.Spans {
		s := &v.Spans[i]
		if s.Warm == 0 && s.Wet == 0 {
			continue
		}
		a.say(words.P("cli.weather_span", words.Args{"first": s.First, "warm": s.Warm, "wet": s.Wet, "n": s.Days, "rain": s.RainMM, "usual": s.UsualRainMM,
			"et0": s.ET0MM, "dd": s.DegreeDays}))
	}
	for i := range v.Addresses {
		a.say(addressState(&v.Addresses[i]))
	}
	for i := range v.Sensors {
		s := &v.Sensors[i]
		if s.At == nil {
			a.say(words.P("cli.weather_sensor_never", words.Args{"name": s.Name}))
			continue
		}
		a.say(words.P("cli.weather_sensor", words.Args{"name": s.Name, "v": *s.Value, "unit": s.Unit, "at": s.At.Format(momentForm), "refused": s.Refused}))
	}
}

// momentForm is a moment on one line.
const momentForm = "2006-01-02 15:04"

func addressState(s *desk.AddressState) words.Phrase {
	args := words.Args{"host": s.Host, "n": s.Days, "fails": s.Fails}
	switch {
	case !s.On:
		return words.P("cli.weather_address_off", args)
	case s.GotAt == nil && s.Why == nil:
		return words.P("cli.weather_address_never", args)
	case s.Why != nil:
		args["why"], args["at"] = *s.Why, s.Tried.Format(momentForm)
		return words.P("cli.weather_address_failed", args)
	}
	args["at"] = s.GotAt.Format(momentForm)
	return words.P("cli.weather_address_got", args)
}
