package observed

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
)

var may = cal.Of(2027, 5, 1)

// stationOf is a station's record from 1 May on: rain by day, nights of 5 C and days
// of 15 C, a degree more each day.
func stationOf(rain ...float64) *climate.Record {
	r := &climate.Record{ID: "station"}
	for i, mm := range rain {
		r.Days = append(r.Days, climate.Observation{Date: may + cal.Date(i), RainMM: climate.Is(mm),
			TMinC: climate.Is(5 + float64(i)), TMaxC: climate.Is(15 + float64(i)), HumidityPct: climate.Is(80)})
	}
	return r
}

func rainOn(d Days, on cal.Date) float64 {
	for _, o := range d.Record.Days {
		if o.Date == on && o.RainMM.Known {
			return o.RainMM.Value
		}
	}
	return math.NaN()
}

func gauge(on cal.Date, at string, mm float64) Reading {
	return Reading{Site: "home", Date: on, At: at, By: ByHand, Since: cal.None, RainMM: climate.Is(mm)}
}

// A sum over several days is spread as the station's days tell. The gauge read in
// the morning tells of the days up to the day before.
func TestRainIsSpreadAsTheStationTells(t *testing.T) {
	station := stationOf(1, 3, 0, 6, 9)
	first, second := gauge(may, Morning, 0), gauge(may+4, Morning, 20)
	d := Join(station, []Reading{second, first})
	for i, want := range []float64{2, 6, 0, 12, 9} {
		if got := rainOn(d, may+cal.Date(i)); math.Abs(got-want) > 1e-9 {
			t.Errorf("day %d has %g mm, want %g", i, got, want)
		}
	}
	if d.From[may+3].Rain != FromHand || d.From[may+4].Rain != Nothing {
		t.Errorf("the origins are %v", d.From)
	}
	if station.Days[0].RainMM.Value != 1 {
		t.Error("the station's own record was written on")
	}
	if h := d.Record.Days[1].HumidityPct; !h.Known || h.Value != 80 {
		t.Error("what was not read by hand is lost")
	}
}

// Without station days, or where these are dry, all is put on the last day.
func TestRainWithoutAStationIsPutOnItsLastDay(t *testing.T) {
	for name, station := range map[string]*climate.Record{"none": nil, "dry": stationOf(0, 0, 0, 0), "a day missing": stationOf(4, 4)} {
		d := Join(station, []Reading{gauge(may, Evening, 0), gauge(may+3, Evening, 7)})
		if got := rainOn(d, may+3); got != 7 {
			t.Errorf("%s: the last day has %g mm, want 7", name, got)
		}
		if got := rainOn(d, may+1); got != 0 {
			t.Errorf("%s: a day before has %g mm, want none", name, got)
		}
	}
}

// The sum of what a gauge told is kept, whatever the station says and however the
// readings fall.
func TestRainReadIsKept(t *testing.T) {
	station := stationOf(0, 2, 0, 0, 5, 1, 0, 8, 0, 0, 3, 0)
	read := []Reading{gauge(may, Evening, 3), gauge(may+2, Morning, 0.4), gauge(may+6, Evening, 11), gauge(may+7, Morning, 0), gauge(may+11, Morning, 6.5)}
	d := Join(station, read)
	sum, want := 0.0, 0.0
	for on := may; on <= may+10; on++ {
		sum += rainOn(d, on)
	}
	for _, r := range read {
		want += r.RainMM.Value
	}
	if math.Abs(sum-want) > 1e-9 {
		t.Errorf("%g mm are on record of %g mm read", sum, want)
	}
}

func thermometer(on cal.Date, low, high float64) Reading {
	return Reading{Site: "home", Date: on, At: Morning, By: ByHand, Since: cal.None, TMinC: climate.Is(low), TMaxC: climate.Is(high)}
}

func of(d Days, on cal.Date) climate.Observation {
	for _, o := range d.Record.Days {
		if o.Date == on {
			return o
		}
	}
	return climate.Observation{}
}

// Read each morning, the minimum is of that day and the maximum of the day before.
func TestExtremesOfAMorning(t *testing.T) {
	d := Join(nil, []Reading{thermometer(may, 2, 12), thermometer(may+1, 4, 19)})
	if o := of(d, may); o.TMinC.Value != 2 || o.TMaxC.Value != 19 {
		t.Errorf("the day is %g to %g C, want 2 to 19", o.TMinC.Value, o.TMaxC.Value)
	}
	if o := of(d, may+1); o.TMinC.Value != 4 || o.TMaxC.Known {
		t.Errorf("the last day is %v, want its night alone", o)
	}
}

// An extreme over several days goes to the day of the station's own; the others are
// held within it. Without station days it is given to none.
func TestExtremesOverSeveralDays(t *testing.T) {
	read := []Reading{thermometer(may, 5, 14), thermometer(may+4, 5.5, 16.5)}
	d := Join(stationOf(0, 0, 0, 0, 0), read)
	// Nights of the second to fifth day, 6 to 9 C at the station: the coldest is the
	// second's. Days of the first to fourth, 15 to 18 C: the warmest is the fourth's.
	if o := of(d, may+1); o.TMinC.Value != 5.5 || o.TMaxC.Value != 16 {
		t.Errorf("the second day is %g to %g C, want 5.5 to 16", o.TMinC.Value, o.TMaxC.Value)
	}
	if o := of(d, may+2); o.TMaxC.Value != 16.5 {
		t.Errorf("the third day reaches %g C, want to be held at 16.5", o.TMaxC.Value)
	}
	if o := of(d, may+3); o.TMaxC.Value != 16.5 || d.From[may+3].Warmth != FromHand {
		t.Errorf("the fourth day reaches %g C from %q, want 16.5 by hand", o.TMaxC.Value, d.From[may+3].Warmth)
	}
	if d := Join(nil, read); of(d, may+3).TMaxC.Known || of(d, may+2).TMinC.Known {
		t.Error("an extreme over several days was given to one of them without a station")
	}
}

// A hand goes before an instrument, an instrument before the station, and a reading
// under a cover before nothing.
func TestWhatGoesBeforeWhat(t *testing.T) {
	instrument := Reading{Site: "home", Date: may + 1, By: Instrument, Since: cal.None, RainMM: climate.Is(4), TMinC: climate.Is(1), TMaxC: climate.Is(11), WindMS: climate.Is(3)}
	under := thermometer(may+1, 9, 30)
	under.Bed = "tunnel"
	d := Join(stationOf(9, 9, 9), []Reading{instrument, under})
	if o := of(d, may+1); o.RainMM.Value != 4 || o.TMinC.Value != 1 || o.TMaxC.Value != 11 || o.WindMS.Value != 3 {
		t.Errorf("the day is %v, want the instrument's", o)
	}
	d = Join(stationOf(9, 9, 9), []Reading{gauge(may+1, Evening, 5), instrument})
	if got := rainOn(d, may+1); got != 5 || d.From[may+1].Rain != FromHand || d.From[may+1].Warmth != FromSensor {
		t.Errorf("%g mm from %v, want 5 mm by hand and the instrument's warmth", got, d.From[may+1])
	}
	if only := Join(stationOf(9), []Reading{under}); of(only, may).TMaxC.Value != 15 || len(only.From) > 0 {
		t.Error("a thermometer under a cover told of the open")
	}
}

// A forecast counts ten days from the day it was made, and of two the newer.
func TestForecastsGoOut(t *testing.T) {
	days := func(first cal.Date, n int, c float64) (out []climate.Observation) {
		for i := range n {
			out = append(out, climate.Observation{Date: first + cal.Date(i), TMinC: climate.Is(c), TMaxC: climate.Is(c + 8)})
		}
		return out
	}
	r, made := Ahead(Forecast{Made: may, Days: days(may, 16, 5)}, Forecast{Made: may + 2, Days: days(may+2, 3, 1)})
	if made != may+2 || len(r.Days) != MostAhead {
		t.Fatalf("%d days made on %s, want %d of %s", len(r.Days), made, MostAhead, may+2)
	}
	for i, want := range []float64{5, 5, 1, 1, 1, 5} {
		if got := r.Days[i].TMinC.Value; got != want {
			t.Errorf("day %d has a night of %g C, want %g", i, got, want)
		}
	}
	if r, _ := Ahead(Forecast{Made: may + 20, Days: days(may, 10, 5)}); r != nil {
		t.Error("days before a forecast was made are still ahead")
	}
}

// Units as they are defined: 212 F, 373.15 K and 100 C are the same, 1 in is
// 25.4 mm, 1 mile an hour 0.44704 m/s and 1 knot 1852 m an hour (SI brochure and
// NIST SP 811; memory).
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		quantity, unit string
		sent, want     float64
		ok             bool
	}{
		{Temperature, "F", 50, 10, true}, {Temperature, "K", 273.15, 0, true}, {Temperature, "C", 99, 99, false},
		{Rain, "in", 1, 25.4, true}, {Wind, "mph", 10, 4.4704, true}, {Wind, "kn", 10, 5.1444, true}, {Wind, "km/h", 36, 10, true},
		{Humidity, "share", 0.5, 50, true}, {Humidity, "%", 120, 120, false}, {SoilTension, "hPa", 300, 30, true}, {Temperature, "mm", 3, 0, false},
	} {
		s := Sensor{Quantity: c.quantity, Unit: c.unit}
		if got, ok := s.Figure(c.sent); ok != c.ok || math.Abs(got-c.want) > 1e-3 {
			t.Errorf("%g %s of %s is %g (%t), want %g (%t)", c.sent, c.unit, c.quantity, got, ok, c.want, c.ok)
		}
	}
}
