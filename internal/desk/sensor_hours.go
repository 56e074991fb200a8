package desk

import (
	"math"
	"slices"
	"sync"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/observed"
)

// heardDays is how far back hours of instruments are looked up: a growing year, and
// the days before it that rules look back on.
const heardDays = 366 + riskLead

// heardHours are the hours of a household's instruments as they were last looked up.
type heardHours struct {
	mu      sync.Mutex
	version int64 // of the holding
	hour    int64 // since 1970 in which they were looked up
	by      map[string][]climate.Hour
}

// heard lays the hours that instruments sent over what is asked about, and tells the
// hour in which they were looked up; 0 where there are no instruments. They are
// looked up once an hour: rules go by days that are over.
func (o *Office) heard(a *asked) (hour int64, err error) {
	if !hearsWeather(a.holding) {
		return 0, nil
	}
	k := &o.hearing.hours
	k.mu.Lock()
	defer k.mu.Unlock()
	hour = time.Now().Unix() / 3600
	if k.by == nil || k.version != a.version || k.hour != hour {
		if k.by, err = hoursHeard(o.keeper, a.holding); err != nil {
			return 0, err
		}
		k.version, k.hour = a.version, hour
	}
	own := *a.holding
	own.Heard = k.by
	a.holding = &own
	return hour, nil
}

// hearsWeather tells whether any instrument stands in the open.
func hearsWeather(h *holding.Holding) bool {
	return slices.ContainsFunc(h.Sensors, func(s observed.Sensor) bool { return hourField(&s) != nil })
}

// hourField is where the figures of an instrument in the open stand in an hour; nil
// where the rules do not look at them.
func hourField(s *observed.Sensor) func(*climate.Hour) *float64 {
	if s.Bed != "" {
		return nil
	}
	switch s.Quantity {
	case observed.Temperature:
		return func(h *climate.Hour) *float64 { return &h.TempC }
	case observed.Humidity:
		return func(h *climate.Hour) *float64 { return &h.HumidityPct }
	case observed.Rain, observed.RainTotal:
		return func(h *climate.Hour) *float64 { return &h.RainMM }
	case observed.Wind:
		return func(h *climate.Hour) *float64 { return &h.WindMS }
	}
	return nil
}

// hoursHeard are the hours that the instruments of each site sent, by the
// household's clock. Of two instruments of one quantity the first in the list counts.
func hoursHeard(keeper Keeper, h *holding.Holding) (map[string][]climate.Hour, error) {
	out := map[string][]climate.Hour{}
	k, can := keeper.(WeatherKeeper)
	now, err := today(h)
	if !can || err != nil {
		return out, err
	}
	zone := zoneOf(h)
	y, m, d := (now - heardDays).YMD()
	from := time.Date(y, time.Month(m), d, 0, 0, 0, 0, zone).Unix() / 3600
	for i := range h.Sensors {
		s := &h.Sensors[i]
		if hourField(s) == nil {
			continue
		}
		sent, err := k.MeasuredHours(s.ID, from)
		if err != nil {
			return nil, err
		}
		out[s.Site] = climate.LayHours(out[s.Site], hoursOf(s, sent, zone))
	}
	return out, nil
}

// hoursOf are the hours of one instrument by a clock. Of an hour that the clock
// repeats the first counts.
func hoursOf(s *observed.Sensor, sent []MeasuredHour, zone *time.Location) []climate.Hour {
	field, out := hourField(s), make([]climate.Hour, 0, len(sent))
	for i := range sent {
		f := &sent[i]
		at := time.Unix(f.Hour*3600+1800, 0).In(zone) // the middle: some zones are half an hour off
		y, m, d := at.Date()
		nothing := math.NaN()
		hour := climate.Hour{Date: cal.Of(y, int(m), d), Hour: at.Hour(), TempC: nothing, HumidityPct: nothing, RainMM: nothing, WindMS: nothing}
		switch s.Quantity {
		case observed.Rain, observed.RainTotal:
			*field(&hour) = f.Rise
		default:
			*field(&hour) = f.Total / float64(max(1, f.N))
		}
		if n := len(out); n == 0 || out[n-1].At() < hour.At() {
			out = append(out, hour)
		}
	}
	return out
}
