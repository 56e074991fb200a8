package exchange

import (
	"os"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/observed"
)

// What is wrong with readings, forecasts, addresses and instruments is told at its
// cell, and what is sound is not.
func TestFaultsOfReadings(t *testing.T) {
	is := climate.Is
	day := cal.Of(2027, 2, 20)
	sound := observed.Reading{ID: "a", Site: "home", Date: day, At: "morning", By: "hand", Since: cal.None, RainMM: is(0), TMinC: is(-2), TMaxC: is(0)}
	ahead := observed.Foretold{ID: "f", Site: "home", Date: day + 1, Told: day, TMinC: is(0), TMaxC: is(3)}
	address := observed.Address{ID: "x", Site: "home", URL: "https://forecast.example/", Layout: "json", EveryH: 6, On: "no"}
	sensor := observed.Sensor{ID: "s", Name: "shed", Site: "home", Topic: "shed/+", Quantity: "rain total", Unit: "in"}
	for name, c := range map[string]struct {
		change func(r *observed.Reading, f *observed.Foretold, a *observed.Address, s *observed.Sensor)
		want   string
	}{
		"sound": {func(*observed.Reading, *observed.Foretold, *observed.Address, *observed.Sensor) {}, ""},
		"nothing read": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.RainMM, r.TMinC, r.TMaxC = climate.Maybe{}, climate.Maybe{}, climate.Maybe{}
		}, "weather_readings.csv:2:rain_mm:"},
		"crossed": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.TMinC = is(4)
		}, "weather_readings.csv:2:tmin_c:"},
		"no day's range": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.TMaxC = is(59)
		}, "weather_readings.csv:2:tmax_c:"},
		"emptied later": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.Since = day + 1
		}, "weather_readings.csv:2:since:"},
		"rain under cover": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) { r.Bed = "h1" }, "weather_readings.csv:2:rain_mm:"},
		"yet to come": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.Date = cal.Of(2099, 1, 1)
		}, "weather_readings.csv:2:date:"},
		"no such site": {func(r *observed.Reading, _ *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			r.Site = "moon"
		}, "weather_readings.csv:2:site:"},
		"past forecast": {func(_ *observed.Reading, f *observed.Foretold, _ *observed.Address, _ *observed.Sensor) {
			f.Date = day - 1
		}, "forecasts.csv:2:date:"},
		"no address": {func(_ *observed.Reading, _ *observed.Foretold, a *observed.Address, _ *observed.Sensor) {
			a.URL = "ftp://x"
		}, "addresses.csv:2:url:"},
		"no map": {func(_ *observed.Reading, _ *observed.Foretold, a *observed.Address, _ *observed.Sensor) {
			a.Map = "date=a"
		}, "addresses.csv:2:map:"},
		"no such unit": {func(_ *observed.Reading, _ *observed.Foretold, _ *observed.Address, s *observed.Sensor) { s.Unit = "C" }, "sensors.csv:2:unit:"},
		"probe in no bed": {func(_ *observed.Reading, _ *observed.Foretold, _ *observed.Address, s *observed.Sensor) {
			s.Quantity, s.Unit = "soil moisture", "%"
		}, "sensors.csv:2:bed:"},
		"all topics": {func(_ *observed.Reading, _ *observed.Foretold, _ *observed.Address, s *observed.Sensor) {
			s.Topic = "#"
		}, "sensors.csv:2:topic:"},
	} {
		h, report := ReadFolder(os.DirFS("testdata/hand"))
		if !report.OK() {
			t.Fatal(report.Faults)
		}
		r, f, a, s := sound, ahead, address, sensor
		c.change(&r, &f, &a, &s)
		h.WeatherReadings, h.Foretold, h.Addresses, h.Sensors = []observed.Reading{r}, []observed.Foretold{f}, []observed.Address{a}, []observed.Sensor{s}
		faults := Check(h, testBook(t))
		switch {
		case c.want == "" && len(faults) > 0:
			t.Errorf("%s: %v", name, faults)
		case c.want != "" && (len(faults) != 1 || !strings.Contains(faults.Error(), c.want)):
			t.Errorf("%s: %v, want one at %s", name, faults, c.want)
		}
	}
}
