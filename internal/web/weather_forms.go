package web

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/observed"
)

// The forms of the rows behind the page of the weather.
var (
	weatherReadingForm = rowForm{
		table: "weather_readings", nav: "weather", after: afterWeather,
		fields: []fieldForm{{name: "date"}, {name: "at"}, {name: "rain_mm"}, {name: "tmin_c"}, {name: "tmax_c"}, {name: "site", wide: true},
			{name: "bed", wide: true, choices: bedsOrOpen}, {name: "since", more: true}, {name: "note", more: true}, {name: "by", more: true},
			{name: "rh_pct", more: true}, {name: "rad_mj_m2", more: true}, {name: "wind_ms", more: true}},
	}
	foretoldForm = rowForm{
		table: "forecasts", nav: "weather", after: afterWeather,
		fields: []fieldForm{{name: "site", wide: true}, {name: "date"}, {name: "tmin_c"}, {name: "tmax_c"}, {name: "rain_mm"}, {name: "wind"}, {name: "sky"}, {name: "told"}},
	}
	addressForm = rowForm{
		table: "addresses", nav: "weather", after: afterWeather,
		fields: []fieldForm{{name: "site", wide: true}, {name: "url", wide: true}, {name: "layout", wide: true}, {name: "on"}, {name: "every_h"}, {name: "map", wide: true, more: true}},
	}
	sensorForm = rowForm{
		table: "sensors", nav: "weather", after: afterWeather,
		fields: []fieldForm{{name: "name", wide: true}, {name: "site", wide: true}, {name: "topic", wide: true}, {name: "quantity", wide: true}, {name: "unit", choices: unitChoices},
			{name: "bed", wide: true, choices: bedsOrOpen}, {name: "field", more: true}, {name: "time", more: true}},
	}
)

// afterWeather leads to the page of the site.
func afterWeather(_ *visit, cells map[string]string) string {
	if cells["site"] == "" {
		return "/weather"
	}
	return weatherPath(cells["site"])
}

// bedsOrOpen are the beds, and the open.
func bedsOrOpen(c *choosing) ([]option, error) {
	beds, err := bedChoices(c)
	return append([]option{{"", c.say("web.weather_open", nil)}}, beds...), err
}

// unitChoices are the units of all quantities.
func unitChoices(*choosing) ([]option, error) {
	var out []option
	for _, u := range observed.AllUnits() {
		out = append(out, option{u, u})
	}
	return out, nil
}

// forecastDays is how many days of a forecast are asked for.
const forecastDays = 5

// weatherForms makes the small forms of the page.
func (v *visit) weatherForms(b *weatherBody, typed typedForm) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	site := hiddenField{"site", b.Site}
	if b.Reading, err = v.small("reading", "/weather/reading", typed, []fieldBody{
		{Name: "date", Label: v.say("web.weather_on", nil), Kind: kindDate, Value: b.Today.String(), Must: true},
		{Name: "at", Label: v.say("desk.column_weather_readings.at", nil), Kind: kindChoice, Value: "morning", Must: true,
			Options: []option{{"morning", v.say("desk.value_weather_readings.at.morning", nil)}, {"evening", v.say("desk.value_weather_readings.at.evening", nil)}}},
		{Name: "rain_mm", Label: v.say("desk.column_weather_readings.rain_mm", nil), Kind: kindNumber, Unit: v.say("web.weather_mm", nil)},
		{Name: "tmin_c", Label: v.say("desk.column_weather_readings.tmin_c", nil), Kind: kindNumber, Unit: v.say("web.weather_c", nil)},
		{Name: "tmax_c", Label: v.say("desk.column_weather_readings.tmax_c", nil), Kind: kindNumber, Unit: v.say("web.weather_c", nil)},
		{Name: "bed", Label: v.say("desk.column_weather_readings.bed", nil), Kind: kindChoice, Options: v.bedsUnder(h, b.Site)},
	}, site); err != nil {
		return err
	}
	for _, e := range typed.faults {
		b.Ask = b.Ask || typed.id == "reading" && e.At.Column == sureField
	}
	var fields []fieldBody
	for i := range forecastDays {
		fields = append(fields, v.forecastFields(b.Today+cal.Date(i), i)...)
	}
	b.Forecast, err = v.small("forecast", "/weather/forecast", typed, fields, site)
	for i := range h.Foretold {
		if f := &h.Foretold[i]; f.Site == b.Site && f.Date >= b.Today {
			b.Typed = append(b.Typed, foretoldRow{rowPath(&foretoldForm, f.ID) + "/edit", f.Date})
		}
	}
	return err
}

// bedsUnder are the beds of a site, and the open.
func (v *visit) bedsUnder(h *holding.Holding, site string) []option {
	out := []option{{"", v.say("web.weather_open", nil)}}
	for _, b := range h.Beds {
		if b.Site == site {
			out = append(out, option{b.ID, b.Name})
		}
	}
	return out
}

func (v *visit) forecastFields(d cal.Date, i int) []fieldBody {
	day := v.words.Format().Day(d)
	name := func(column string) string { return column + "-" + strconv.Itoa(i) }
	label := func(column string) string { return day + ": " + v.say("desk.column_forecasts."+column, nil) }
	return []fieldBody{
		{Name: name("tmin_c"), Label: label("tmin_c"), Kind: kindNumber, Unit: v.say("web.weather_c", nil)},
		{Name: name("tmax_c"), Label: label("tmax_c"), Kind: kindNumber, Unit: v.say("web.weather_c", nil)},
		{Name: name("rain_mm"), Label: label("rain_mm"), Kind: kindNumber, Unit: v.say("web.weather_mm", nil)},
		{Name: name("wind"), Label: label("wind"), Kind: kindChoice, Options: v.listOf("forecasts.wind", "calm", "light", "moderate", "fresh", "strong")},
		{Name: name("sky"), Label: label("sky"), Kind: kindChoice, Options: v.listOf("forecasts.sky", "clear", "broken", "overcast")},
	}
}

func (v *visit) listOf(column string, values ...string) []option {
	out := []option{{"", v.say("web.weather_untold", nil)}}
	for _, value := range values {
		out = append(out, option{value, v.say("desk.value_"+column+"."+value, nil)})
	}
	return out
}

// readingPosted keeps what was read.
func readingPosted(v *visit) error {
	cells := v.sent("reading", "date", "at", "rain_mm", "tmin_c", "tmax_c", "bed")
	site := v.field("site")
	row := map[string]string{"site": site}
	for name, cell := range cells {
		row[name] = cell
	}
	kept, err := v.office.TellReading(v.author(), row, v.field(sureField) != "")
	return v.keptWeather(kept, err, site, "reading", cells)
}

// keptWeather leads on, or shows the page again with what is wrong.
func (v *visit) keptWeather(kept *desk.KeptEntry, err error, site, form string, cells map[string]string) error {
	if err == nil {
		v.kept(kept, weatherPath(site))
		return nil
	}
	faults := listOf(err)
	if faults == nil {
		return err
	}
	return v.showWeather(site, typedForm{form, cells, faults})
}

// forecastPosted keeps the days of a forecast of which anything was typed.
func forecastPosted(v *visit) error {
	now, err := v.office.Today()
	if err != nil {
		return err
	}
	var days []map[string]string
	typed := map[string]string{}
	var faults fault.List
	for i := range forecastDays {
		day, any := map[string]string{"date": (now + cal.Date(i)).String()}, false
		for _, column := range []string{"tmin_c", "tmax_c", "rain_mm", "wind", "sky"} {
			name := column + "-" + strconv.Itoa(i)
			day[column] = v.field("forecast-" + name)
			typed[name] = day[column]
			any = any || day[column] != ""
		}
		for _, column := range []string{"tmin_c", "tmax_c"} {
			if any && day[column] == "" {
				faults = append(faults, fault.New(fault.Invalid, "web.weather_both", nil).In(fault.Place{Column: column + "-" + strconv.Itoa(i)}))
			}
		}
		if any {
			days = append(days, day)
		}
	}
	if len(days) == 0 {
		faults = append(faults, fault.New(fault.Invalid, "web.weather_nothing_typed", nil).In(fault.Place{Column: "tmin_c-0"}))
	}
	site := v.field("site")
	if len(faults) > 0 {
		return v.showWeather(site, typedForm{"forecast", typed, faults})
	}
	kept, err := v.office.TellForecast(v.author(), site, days)
	return v.keptWeather(kept, err, site, "forecast", typed)
}

// fetchPosted asks for the forecasts now. The page does not wait for them.
func fetchPosted(v *visit) error {
	v.office.WakeFetch()
	v.moveTo(weatherPath(v.field("site")) + "#forecast")
	return nil
}
