package store

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
)

var who = desk.Author{Who: "Ada", At: "2027-03-01T08:00:00Z"}

// told writes a row or fails.
func told(t *testing.T, o *desk.Office, table string, cells map[string]string) *desk.KeptEntry {
	t.Helper()
	by := who
	by.Entry = fmt.Sprintf("%s-%s-%d", table, cells["name"]+cells["url"]+cells["date"]+cells["on"], time.Now().UnixNano())
	e, err := o.Save(by, table, "", cells, 0)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// A flood of figures is gathered by the hour; totals count by their steps, and begin
// anew from nothing when they fall.
func TestMeasuredFiguresAreGathered(t *testing.T) {
	s, _ := begun(t, inFolder(t))
	at := int64(1_800_000_000) / 3600 * 3600
	var figures []desk.Measured
	for i := range 3600 {
		figures = append(figures, desk.Measured{Sensor: "air", At: at + int64(i), Value: float64(i % 10)})
	}
	for i, total := range []float64{100, 100.4, 100.4, 101, 0.2, 0.6} {
		figures = append(figures, desk.Measured{Sensor: "gauge", At: at + int64(i)*600, Value: total, How: desk.Totals})
	}
	figures = append(figures, desk.Measured{Sensor: "tips", At: at, Value: 0.2, How: desk.Parts}, desk.Measured{Sensor: "tips", At: at + 3599, Value: 0.2, How: desk.Parts})
	if err := s.KeepMeasured(figures, nil); err != nil {
		t.Fatal(err)
	}
	for sensor, want := range map[string]desk.MeasuredHour{
		"air":   {Hour: at / 3600, N: 3600, Total: 16200, Least: 0, Most: 9, Last: 9},
		"gauge": {Hour: at / 3600, N: 6, Total: 402.6, Least: 0.2, Most: 101, Rise: 1.6, Last: 0.6},
		"tips":  {Hour: at / 3600, N: 2, Total: 0.4, Least: 0.2, Most: 0.2, Rise: 0.4, Last: 0.2},
	} {
		hours, err := s.MeasuredHours(sensor, 0)
		if err != nil || len(hours) != 1 {
			t.Fatalf("%s: %v, %v", sensor, hours, err)
		}
		got := hours[0]
		for _, f := range []*float64{&got.Total, &got.Rise} {
			*f = float64(int(*f*1000+0.5)) / 1000
		}
		if got != want {
			t.Errorf("%s: %+v, want %+v", sensor, got, want)
		}
	}
	if e, err := s.Entries(0, 10); err != nil || len(e) != 1 {
		t.Errorf("figures made %d entries, want none beside the first", len(e)-1)
	}
}

// Instruments' messages become a reading for each whole day, one entry a day, told
// once: what a person takes back stays taken back.
func TestDaysOfInstruments(t *testing.T) {
	s, o := begun(t, inFolder(t))
	for _, c := range []map[string]string{
		{"name": "air", "site": "home", "topic": "shed/air", "field": "t", "quantity": "temperature", "unit": "F", "time": "at"},
		{"name": "gauge", "site": "home", "topic": "shed/+", "field": "rain", "quantity": "rain total", "unit": "mm", "time": "at"},
	} {
		told(t, o, "sensors", c)
	}
	now, err := o.Today()
	if err != nil {
		t.Fatal(err)
	}
	yesterday := now - 1
	y, m, d := yesterday.YMD()
	midnight := time.Date(y, time.Month(m), d, 0, 30, 0, 0, zoneOf(t, o))
	var messages []desk.Message
	for h := range 24 {
		at := midnight.Add(time.Duration(h) * time.Hour)
		messages = append(messages, desk.Message{Topic: "shed/air", At: at.Add(time.Minute),
			Payload: fmt.Appendf(nil, `{"t":%d,"rain":%g,"at":%q}`, 32+h, 10+float64(h)/10, at.Format(time.RFC3339))})
	}
	messages = append(messages, desk.Message{Topic: "shed/air", At: midnight, Payload: []byte("rubbish")},
		desk.Message{Topic: "shed/air", At: midnight, Payload: []byte(`{"t":900,"rain":11,"at":"` + midnight.Format(time.RFC3339) + `"}`)},
		desk.Message{Topic: "elsewhere/air", At: midnight, Payload: []byte("1")})
	if err := o.Hear(messages); err != nil {
		t.Fatal(err)
	}
	if err := o.CloseDays(who); err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil || len(h.WeatherReadings) == 0 {
		t.Fatalf("no reading was made: %v", err)
	}
	r := h.WeatherReadings[len(h.WeatherReadings)-1]
	if r.Date != yesterday || r.By != "instrument" || r.TMinC.Value != 0 || r.TMaxC.Value != 12.78 || !r.RainMM.Known || r.RainMM.Value < 2.29 || r.RainMM.Value > 2.31 {
		t.Errorf("the reading is %+v, want 0 to 12.78 C and 2.3 mm", r)
	}
	heard, err := s.Heard(sensorID(t, h, "air"))
	if err != nil || heard.Refused != 2 || heard.Why == nil {
		t.Errorf("%+v, %v, want two messages refused", heard, err)
	}
	entries, err := o.Entries(1)
	if err != nil {
		t.Fatal(err)
	}
	by := who
	by.Entry = "taken-back"
	if _, err := o.Undo(by, entries[0].ID); err != nil {
		t.Fatal(err)
	}
	count := len(h.WeatherReadings)
	if err := o.CloseDays(who); err != nil {
		t.Fatal(err)
	}
	if h, err = o.Holding(); err != nil || len(h.WeatherReadings) != count-1 {
		t.Errorf("%d readings after the day was taken back, want %d", len(h.WeatherReadings), count-1)
	}
}

func zoneOf(t *testing.T, o *desk.Office) *time.Location {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

func sensorID(t *testing.T, h *holding.Holding, name string) string {
	t.Helper()
	for _, s := range h.Sensors {
		if s.Name == name {
			return s.ID
		}
	}
	t.Fatalf("no instrument is called %s", name)
	return ""
}

// Hours that instruments sent reach the rules of their site, by the household's
// clock, without an entry; an instrument under a cover tells nothing of the open.
func TestHoursOfInstrumentsReachTheRules(t *testing.T) {
	s, o := begun(t, inFolder(t))
	told(t, o, "sensors", map[string]string{"name": "air", "site": "home", "topic": "air", "quantity": "temperature", "unit": "C"})
	told(t, o, "sensors", map[string]string{"name": "damp", "site": "home", "topic": "damp", "quantity": "humidity", "unit": "%"})
	now, err := o.Today()
	if err != nil {
		t.Fatal(err)
	}
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	before, err := o.Entries(100)
	if err != nil {
		t.Fatal(err)
	}
	y, m, d := (now - 3).YMD()
	midnight := time.Date(y, time.Month(m), d, 0, 0, 0, 0, zoneOf(t, o))
	var figures []desk.Measured
	for i := range 3 * 24 * 2 {
		at := midnight.Add(time.Duration(i) * 30 * time.Minute).Unix()
		figures = append(figures, desk.Measured{Sensor: sensorID(t, h, "air"), At: at, Value: 14}, desk.Measured{Sensor: sensorID(t, h, "damp"), At: at, Value: 95})
	}
	if err := s.KeepMeasured(figures, nil); err != nil {
		t.Fatal(err)
	}
	kept, err := desk.KeptHolding(s)
	if err != nil {
		t.Fatal(err)
	}
	hours := kept.Heard["home"]
	if len(hours) != 72 || hours[0].Date != now-3 || hours[0].Hour != 0 || hours[0].TempC != 14 || hours[0].HumidityPct != 95 {
		t.Fatalf("%d hours from %+v", len(hours), hours[0])
	}
	v, err := o.RiskView()
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range v.Weather {
		if heard := w.Site == "home"; heard != (len(w.Origins) == 1 && w.Origins[0] == desk.RiskOrigin{From: desk.HoursHeard, Days: 3}) {
			t.Errorf("%s: the hours come from %+v", w.Site, w.Origins)
		}
	}
	after, err := o.Entries(100)
	if err != nil || len(after) != len(before) {
		t.Errorf("%d entries were made, %v", len(after)-len(before), err)
	}
}

// A forecast is fetched when it is due, kept over failures, asked for again after
// pauses that grow, and never for an address that is off.
func TestForecastsAreFetched(t *testing.T) {
	s, o := begun(t, inFolder(t))
	now, err := o.Today()
	if err != nil {
		t.Fatal(err)
	}
	asked, fails := 0, false
	get := func(_ context.Context, ask desk.FetchAsk) (*desk.FetchAnswer, error) {
		asked++
		switch {
		case fails:
			return nil, fault.New(fault.Invalid, "fetch.slow", nil)
		case ask.Tag == `"one"`:
			return &desk.FetchAnswer{Unchanged: true}, nil
		case strings.HasSuffix(ask.URL, "rubbish"):
			return &desk.FetchAnswer{Body: []byte("<html>")}, nil
		}
		var body strings.Builder
		body.WriteString("date,tmin_c,tmax_c,rain_mm\n")
		for i := range 16 {
			fmt.Fprintf(&body, "%s,-3,4,1\n", now+cal.Date(i))
		}
		return &desk.FetchAnswer{Body: []byte(body.String()), Tag: `"one"`}, nil
	}
	clock := time.Date(2027, 3, 1, 8, 0, 0, 0, time.UTC)
	o.FetchDue(context.Background(), get, clock, true)
	told(t, o, "addresses", map[string]string{"site": "home", "url": "http://127.0.0.1/off", "layout": "csv"})
	o.FetchDue(context.Background(), get, clock, true)
	if asked != 0 {
		t.Fatal("an address that is off was asked")
	}
	told(t, o, "addresses", map[string]string{"site": "home", "url": "http://127.0.0.1/days", "layout": "csv", "on": "yes", "every_h": "3"})
	before, err := o.WeatherView("home")
	if err != nil {
		t.Fatal(err)
	}
	o.FetchDue(context.Background(), get, clock, false)
	after, err := o.WeatherView("home")
	if err != nil {
		t.Fatal(err)
	}
	if len(after.Ahead) != 10 || len(before.Ahead) == 10 || *after.Ahead[0].TMinC != -3 {
		t.Errorf("%d days ahead before and %d after, want 10", len(before.Ahead), len(after.Ahead))
	}
	o.FetchDue(context.Background(), get, clock.Add(time.Hour), false)
	if asked != 1 {
		t.Errorf("asked %d times within the three hours, want once", asked)
	}
	o.FetchDue(context.Background(), get, clock.Add(3*time.Hour), false) // unchanged
	fails = true
	tries := 0
	for at := clock.Add(6 * time.Hour); at.Before(clock.Add(30 * time.Hour)); at = at.Add(time.Minute) {
		was := asked
		o.FetchDue(context.Background(), get, at, false)
		tries += asked - was
	}
	// At once, then after 10, 20, 40, 80, 160, 320 minutes and every six hours.
	if tries != 9 {
		t.Errorf("tried %d times in a day of failures, want 9", tries)
	}
	last, err := o.WeatherView("home")
	if err != nil || len(last.Ahead) != 10 {
		t.Errorf("the forecast is lost: %d days, %v", len(last.Ahead), err)
	}
	state := last.Addresses[len(last.Addresses)-1]
	if state.Fails != 9 || state.Why == nil || state.Why.Key != "fetch.slow" || state.Host != "127.0.0.1" || state.GotAt == nil {
		t.Errorf("the state is %+v", state)
	}
	if e, err := s.Entries(0, 10); err != nil || len(e) != 3 {
		t.Errorf("fetching made entries: %d", len(e))
	}
	told(t, o, "addresses", map[string]string{"site": "home", "url": "http://127.0.0.1/rubbish", "layout": "json", "on": "yes"})
	fails = false
	o.FetchDue(context.Background(), get, clock.Add(31*time.Hour), true)
	last, err = o.WeatherView("home")
	if err != nil {
		t.Fatal(err)
	}
	if why := last.Addresses[len(last.Addresses)-1].Why; why == nil || why.Key != "station.json_broken" {
		t.Errorf("rubbish gave %v", why)
	}
}

// A fetch that hangs holds up no page, and ends with the program.
func TestAFetchThatHangsHoldsUpNothing(t *testing.T) {
	_, o := begun(t, inFolder(t))
	told(t, o, "addresses", map[string]string{"site": "home", "url": "http://127.0.0.1/hangs", "layout": "csv", "on": "yes"})
	ctx, stop := context.WithCancel(context.Background())
	began, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		o.FetchForecasts(ctx, func(ctx context.Context, _ desk.FetchAsk) (*desk.FetchAnswer, error) {
			close(began)
			<-ctx.Done()
			return nil, errors.New("ended")
		}, time.Hour)
	}()
	<-began
	o.WakeFetch()
	o.WakeFetch()
	v, err := o.WeatherView("home")
	if err != nil || !v.Addresses[0].Under {
		t.Errorf("%+v, %v", v, err)
	}
	stop()
	<-ended
}
