package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// weatherRoutes names the pages of what fell and what is forecast.
func (s *Server) weatherRoutes(mux *router) {
	mux.Handle("GET /weather", s.atHome(weatherPage))
	mux.Handle("POST /weather/reading", s.atHome(readingPosted))
	mux.Handle("POST /weather/forecast", s.atHome(forecastPosted))
	mux.Handle("POST /weather/fetch", s.atHome(fetchPosted))
	for _, f := range []*rowForm{&weatherReadingForm, &foretoldForm, &addressForm, &sensorForm} {
		s.mountRows(mux, f)
	}
}

// weatherBody is the page of the weather.
type weatherBody struct {
	*desk.WeatherView
	Sites     []link
	Lead      []string
	Draw      string
	Days      []desk.WeatherDay // those drawn
	Spans     []desk.WeatherSpan
	Told      []readingRow
	Under     []desk.UnderReading
	Reading   *smallForm
	Ask       bool // the reading is hardly possible, and asked about
	Forecast  *smallForm
	Typed     []foretoldRow
	Addresses []stateLine
	Sensors   []stateLine
	Broker    string
	On        bool // something is fetched
}

// readingRow is a reading with the way to change it.
type readingRow struct {
	Path string
	Name string // when and where
	Says string
}

// foretoldRow is a typed day of a forecast.
type foretoldRow struct {
	Path string
	Date cal.Date
}

// stateLine is an address or an instrument and how it stands.
type stateLine struct {
	Name, Path string
	Says       []string
}

// weatherPage shows the weather of a site.
func weatherPage(v *visit) error { return v.showWeather(v.query("site"), typedForm{}) }

func (v *visit) showWeather(site string, typed typedForm) error {
	view, err := v.office.WeatherView(site)
	if err != nil {
		return err
	}
	b := &weatherBody{WeatherView: view, Spans: view.Spans, Under: view.Under}
	for _, s := range view.Sites {
		b.Sites = append(b.Sites, link{Name: s.Name, Path: weatherPath(s.ID), Here: s.ID == view.Site})
	}
	for _, p := range view.Lead {
		b.Lead = append(b.Lead, v.sentence(p))
	}
	v.drawWeather(b)
	v.readingRows(b)
	v.weatherStates(b)
	if err := v.weatherForms(b, typed); err != nil {
		return err
	}
	p := page{Name: "weather", Nav: "weather", Body: b}
	if len(typed.faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

func weatherPath(site string) string { return "/weather?site=" + url.QueryEscape(site) }

// drawWeather draws the days on record and those ahead on one scale.
func (v *visit) drawWeather(b *weatherBody) {
	days := append(append([]desk.WeatherDay(nil), b.Last...), b.Ahead...)
	b.Days = days
	f := v.words.Format()
	o := draw.WeatherOptions{Label: v.say("web.weather_drawn", words.Args{"says": strings.Join(b.Lead, " ")}), Today: b.Today, TodayIs: v.say("web.weather_today", nil),
		Warmth: v.say("web.weather_warmth", nil), Rain: v.say("web.weather_rain", nil), Freeze: v.say("web.weather_zero", nil),
		Figure: func(t float64) string { return minus(f.Number(t, 0)) }}
	if b.Normals {
		o.Warmth = v.say("web.weather_warmth_usual", nil)
	}
	for m := range o.Months {
		o.Months[m] = f.ShortMonth(m + 1)
	}
	for _, d := range days {
		if d.TMinC != nil || d.TMaxC != nil || d.RainMM != nil {
			b.Draw = draw.Weather(days, b.Normals, o)
			return
		}
	}
}

// readingRows tells the last readings.
func (v *visit) readingRows(b *weatherBody) {
	for i := range b.Readings {
		r := &b.Readings[i]
		row := readingRow{Path: rowPath(&weatherReadingForm, r.ID) + "/edit", Name: v.say("web.weather_read_"+r.At, words.Args{"date": r.Date})}
		if r.By == "instrument" {
			row.Name = v.say("web.weather_sent_on", words.Args{"date": r.Date})
		}
		if r.BedName != "" {
			row.Name += ", " + v.say("web.weather_under", words.Args{"bed": r.BedName})
		}
		var said []string
		for _, part := range []struct {
			key   string
			value *float64
		}{{"web.weather_said_rain", r.RainMM}, {"web.weather_said_low", r.TMinC}, {"web.weather_said_high", r.TMaxC}} {
			if part.value != nil {
				said = append(said, v.say(part.key, words.Args{"v": *part.value}))
			}
		}
		row.Says = strings.Join(said, ", ")
		b.Told = append(b.Told, row)
	}
}

// weatherStates tells how addresses and instruments stand.
func (v *visit) weatherStates(b *weatherBody) {
	for i := range b.WeatherView.Addresses {
		a := &b.WeatherView.Addresses[i]
		b.On = b.On || a.On
		b.Addresses = append(b.Addresses, stateLine{a.Host, rowPath(&addressForm, a.ID) + "/edit", v.addressSays(a)})
	}
	for i := range b.WeatherView.Sensors {
		s := &b.WeatherView.Sensors[i]
		b.Sensors = append(b.Sensors, stateLine{s.Name, rowPath(&sensorForm, s.ID) + "/edit", v.sensorSays(s)})
	}
	if state := v.office.Broker(); state != nil {
		b.Broker = v.brokerSays(state)
	}
}

func (v *visit) addressSays(a *desk.AddressState) []string {
	var out []string
	if !a.On {
		return []string{v.say("web.weather_address_off", nil)}
	}
	if a.GotAt != nil {
		out = append(out, v.say("web.weather_address_got", words.Args{"when": v.dayAndTime(*a.GotAt), "n": a.Days}))
	} else {
		out = append(out, v.say("web.weather_address_never", nil))
	}
	if a.Why != nil {
		out = append(out, v.say("web.weather_address_failed", words.Args{"when": v.dayAndTime(*a.Tried), "n": a.Fails, "why": *a.Why}))
	}
	switch {
	case a.Under:
		out = append(out, v.say("web.weather_address_under", nil))
	case a.Next != nil && !a.Next.IsZero():
		out = append(out, v.say("web.weather_address_next", words.Args{"when": v.dayAndTime(*a.Next)}))
	}
	return out
}

func (v *visit) sensorSays(s *desk.SensorState) []string {
	quantity := v.named("desk.value_sensors.quantity.", s.Quantity)
	if s.BedName != "" {
		quantity += ", " + s.BedName
	}
	out := []string{capital(quantity) + "."}
	switch {
	case s.Value == nil:
		out = append(out, v.say("web.weather_sensor_never", words.Args{"topic": s.Topic}))
	case s.Silent:
		out = append(out, v.say("web.weather_sensor_silent", words.Args{"v": *s.Value, "unit": s.Unit, "when": v.dayAndTime(*s.At)}))
	default:
		out = append(out, v.say("web.weather_sensor_now", words.Args{"v": *s.Value, "unit": s.Unit, "when": v.dayAndTime(*s.At)}))
	}
	if s.Refused > 0 && s.Why != nil {
		out = append(out, v.say("web.weather_sensor_refused", words.Args{"n": s.Refused, "why": *s.Why}))
	}
	return out
}

func (v *visit) brokerSays(s *desk.BrokerState) string {
	args := words.Args{"host": s.Host, "when": v.dayAndTime(s.Since), "n": s.Failures}
	switch {
	case s.Connected:
		return v.say("web.weather_broker_on", args)
	case s.Why != nil:
		args["why"] = *s.Why
		return v.say("web.weather_broker_off", args)
	}
	return v.say("web.weather_broker_trying", args)
}

// minus writes the sign of a number below nothing as print does.
func minus(number string) string { return strings.Replace(number, "-", "\u2212", 1) }

// dayAndTime is a moment as "4 January, 14:05".
func (v *visit) dayAndTime(t time.Time) string {
	y, m, d := t.Date()
	return v.words.Format().Day(cal.Of(y, int(m), d)) + fmt.Sprintf(", %02d:%02d", t.Hour(), t.Minute())
}
