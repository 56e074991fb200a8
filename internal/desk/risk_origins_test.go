package desk

import (
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
)

// Hours of a file and of instruments reach the rules as what is pasted does, each told
// with where it comes from; a day of 21 hours counts from none of them.
func TestHoursFromFilesAndInstrumentsFireRules(t *testing.T) {
	today := cal.Of(2027, 7, 10)
	damp := dampDays(today, 3, 95)
	short := damp[:24+21]
	for name, c := range map[string]struct {
		lay   func(h *holding.Holding)
		from  HourOrigin
		fired int
	}{
		"a file": {func(h *holding.Holding) {
			own := h.Weather[0].Own()
			h.Weather[0].Apart, h.Weather[0].Hours = &own, damp
			h.Files = append(h.Files, holding.WeatherFile{Weather: h.Weather[0].ID, Name: "field.txt", Station: "720000-99999", Hours: damp})
		}, HoursOfFile, 2},
		"instruments": {func(h *holding.Holding) {
			h.Heard = map[string][]climate.Hour{}
			for _, s := range h.Sites {
				h.Heard[s.ID] = damp
			}
		}, HoursHeard, 2},
		"pasted":                 {func(h *holding.Holding) { h.Weather[0].Hours = damp }, HoursPasted, 2},
		"a day of too few hours": {func(h *holding.Holding) { h.Weather[0].Hours = short }, HoursPasted, 0},
	} {
		v := riskOn(t, "", today, c.lay)
		blight := riskItemOf(t, v, "late-blight")
		if got := len(blight.Rules[0].Fired); got != c.fired {
			t.Errorf("%s: fired %d times, want %d", name, got, c.fired)
		}
		at := slices.IndexFunc(v.Weather, func(w RiskWeather) bool { return w.Site == blight.Site })
		if o := v.Weather[at].Origins; len(o) != 1 || o[0].From != c.from || o[0].Days == 0 {
			t.Errorf("%s: the hours come from %+v", name, o)
		}
	}
}

// Of the days of a forecast a rule over hours is told by hours made from them, and
// marked so; without a forecast nothing is told of the days ahead.
func TestRulesOverTheForecast(t *testing.T) {
	today := cal.Of(2027, 7, 10)
	v := riskOn(t, "", today, func(h *holding.Holding) {
		h.Weather[0].Hours = dampDays(today, 1, 60)
		h.Weather[0].Forecast = &climate.Record{}
		for d := range cal.Date(3) {
			h.Weather[0].Forecast.Days = append(h.Weather[0].Forecast.Days, climate.Observation{Date: today + d, TMinC: climate.Is(13), TMaxC: climate.Is(15), HumidityPct: climate.Is(96)})
		}
	})
	blight := riskItemOf(t, v, "late-blight")
	r := blight.Rules[0]
	if len(r.Fired) != 0 || !slices.Equal(r.Ahead, []cal.Date{today + 1, today + 2}) || blight.State != AtRiskPerhaps {
		t.Errorf("fired %v, ahead %v, %s", r.Fired, r.Ahead, blight.State)
	}
	if says := blight.Says[0]; says.Key != "desk.risk_ahead_on" {
		t.Errorf("says %+v", says)
	}
	v = riskOn(t, "", today, func(h *holding.Holding) { h.Weather[0].Hours = dampDays(today, 1, 60) })
	if r := riskItemOf(t, v, "late-blight").Rules[0]; len(r.Ahead) != 0 {
		t.Errorf("without a forecast: %v", r.Ahead)
	}
}
