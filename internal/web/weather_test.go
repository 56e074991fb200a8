package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// The main path of the weather: a gauge and a thermometer are read, a forecast is
// typed, both are drawn and told, and each is taken back by Undo.
func TestTheWeatherIsRead(t *testing.T) {
	h, o := garden(t, words.English())
	page := open(t, h, "/weather")
	if got := page.words(); !strings.Contains(got, "Nothing is on record at Larkmeer house garden since 31 December 2019") || !strings.Contains(got, "No forecast is told") {
		t.Errorf("%s", got)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/weather/reading"), "reading-date", "2027-01-03", "reading-rain_mm", "12,5", "reading-tmin_c", "-4", "reading-tmax_c", "3"))
	if got := page.words(); !strings.Contains(got, "3 Jan, morning") || !strings.Contains(got, "−4") {
		t.Errorf("after reading: %s", got)
	}
	if said := page.one(t, "div", "class", "said").words(); !strings.Contains(said, "Undo") {
		t.Errorf("said %q", said)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/weather/forecast"), "forecast-tmin_c-0", "-6", "forecast-tmax_c-0", "1", "forecast-sky-0", "clear", "forecast-tmin_c-2", "2", "forecast-tmax_c-2", "8", "forecast-rain_mm-2", "9"))
	if got := page.words(); !strings.Contains(got, "The forecast goes to 6 Jan") || !strings.Contains(got, "coldest on 4 Jan") {
		t.Errorf("after the forecast: %s", got)
	}
	house, err := o.Holding()
	if err != nil || len(house.Foretold) != 2 || len(house.WeatherReadings) != 1 {
		t.Errorf("%d days and %d readings are kept, %v", len(house.Foretold), len(house.WeatherReadings), err)
	}
	page = follow(t, h, post(t, h, formTo(t, page, "/undo")))
	if got := page.words(); !strings.Contains(got, "No forecast is told") {
		t.Errorf("after Undo: %s", got)
	}
}

// What cannot be is said beside its field; what hardly can is asked about once.
func TestWhatCannotBeOfTheWeather(t *testing.T) {
	h, _ := garden(t, words.English())
	for _, w := range []struct {
		form  string
		typed []string
		says  string
	}{
		{"/weather/reading", nil, "Nothing was read"},
		{"/weather/reading", []string{"reading-tmin_c", "9", "reading-tmax_c", "3"}, "above"},
		{"/weather/reading", []string{"reading-tmin_c", "cold"}, "number"},
		{"/weather/reading", []string{"reading-date", "2027-02-01", "reading-rain_mm", "3"}, "4 January 2027"},
		{"/weather/reading", []string{"reading-rain_mm", "3", "reading-bed", "h1"}, "Rain under a cover"},
		{"/weather/reading", []string{"reading-tmin_c", "34", "reading-tmax_c", "43"}, "Fahrenheit"},
		{"/weather/reading", []string{"reading-rain_mm", "400"}, "tenths"},
		{"/weather/forecast", nil, "Nothing was typed"},
		{"/weather/forecast", []string{"forecast-tmin_c-1", "3"}, "its lowest and its highest"},
	} {
		got := post(t, h, formTo(t, open(t, h, "/weather"), w.form), w.typed...)
		if got.Code != http.StatusUnprocessableEntity || !strings.Contains(got.Body.String(), w.says) {
			t.Errorf("%s %v: %d, without %q", w.form, w.typed, got.Code, w.says)
		}
	}
	page := open(t, h, "/weather")
	if got := post(t, h, formTo(t, page, "/weather/reading"), "reading-rain_mm", "400", "sure", "yes"); got.Code != http.StatusSeeOther {
		t.Errorf("a reading that is sure: %d", got.Code)
	}
}

// An address and an instrument are told, and their state is shown without a key that
// the address may hold.
func TestAddressesAndInstruments(t *testing.T) {
	h, _ := garden(t, words.English())
	follow(t, h, post(t, h, formTo(t, open(t, h, "/addresses/new?site=home"), "/addresses/new"), "url", "https://forecast.example/days?key=hush", "layout", "json", "on", "yes"))
	page := follow(t, h, post(t, h, formTo(t, open(t, h, "/sensors/new?site=home"), "/sensors/new"), "name", "Shed", "topic", "shed/air", "quantity", "temperature", "unit", "C"))
	got := page.words()
	for _, want := range []string{"forecast.example", "Nothing was got yet", "Shed", "Nothing was heard under shed/air yet", "told of no broker"} {
		if !strings.Contains(got, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(got, "hush") {
		t.Error("the page shows the whole address")
	}
	if got := post(t, h, formTo(t, page, "/weather/fetch")); got.Code != http.StatusSeeOther {
		t.Errorf("asked to fetch: %d", got.Code)
	}
	for _, w := range [][2]string{{"map", "date=a"}, {"url", "ftp://x"}} {
		got := post(t, h, formTo(t, open(t, h, "/addresses/new?site=home"), "/addresses/new"), "url", "http://x.example", "layout", "json", w[0], w[1])
		if got.Code != http.StatusUnprocessableEntity {
			t.Errorf("%v: %d", w, got.Code)
		}
	}
}
