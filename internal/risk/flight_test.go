package risk

import (
	"math"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
)

// even are days of the same mean temperature [C].
func even(days int, meanC float64) []climate.Day {
	out := make([]climate.Day, days)
	for i := range out {
		out[i] = climate.Day{TMinC: meanC - 5, TMaxC: meanC + 5}
	}
	return out
}

func eventDates(readings []Reading) map[string]cal.Date {
	out := map[string]cal.Date{}
	for _, x := range readings {
		out[x.Event] = x.Date
	}
	return out
}

// Ten degrees above the base a day: 260 C d from 1 March are reached on the 26th day,
// in the south from 1 September. Wisconsin's sums from 1 January begin on 1 July.
func TestSumsBeginInTheSitesHemisphere(t *testing.T) {
	r := ruleNamed(t, "carrot-fly")
	north := eventDates(r.Fired(OfDays(cal.Of(2027, 1, 1), even(365, 15)), Options{}))
	if got := north["first_flight"]; got != cal.Of(2027, 3, 26) {
		t.Errorf("north: %s", got)
	}
	south := eventDates(r.Fired(OfDays(cal.Of(2026, 7, 1), even(365, 15)), Options{South: true}))
	if got := south["first_flight"]; got != cal.Of(2026, 9, 26) {
		t.Errorf("south: %s", got)
	}
	onion := ruleNamed(t, "onion-fly")
	begun := eventDates(onion.Fired(OfDays(cal.Of(2026, 7, 1), even(365, 14.4)), Options{South: true}))
	if got := begun["first_flight"]; got != cal.Of(2026, 7, 1)+37 { // 377.8 / 10 days
		t.Errorf("onion fly, south: %s", got)
	}
	// A sum does not run on through the new year into a second firing of the old.
	two := r.Fired(OfDays(cal.Of(2026, 7, 1), even(730, 15)), Options{South: true})
	if n := len(slices.DeleteFunc(two, func(x Reading) bool { return x.Event != "first_flight" })); n != 2 {
		t.Errorf("%d first flights in two southern years", n)
	}
}

func TestYearsOfBothHemispheres(t *testing.T) {
	for _, c := range []struct {
		day, start cal.Date
		south      bool
	}{
		{cal.Of(2027, 1, 1), cal.Of(2027, 1, 1), false}, {cal.Of(2027, 12, 31), cal.Of(2027, 1, 1), false},
		{cal.Of(2027, 6, 30), cal.Of(2026, 7, 1), true}, {cal.Of(2027, 7, 1), cal.Of(2027, 7, 1), true},
	} {
		if got := YearStart(c.day, c.south); got != c.start {
			t.Errorf("%s, south %v: %s", c.day, c.south, got)
		}
		if got := NextYear(c.day, c.south); got != cal.Of(c.start.Year()+1, c.start.Month(), 1) {
			t.Errorf("after %s, south %v: %s", c.day, c.south, got)
		}
	}
}

// Flies seen ten days before the sum says set the clock forward by ten days, to the
// day: the sum itself is passed some time within one.
func TestASightingSetsWhatComesLater(t *testing.T) {
	r := ruleNamed(t, "cabbage-root-fly-wisconsin") // 166.7 and 820 C d above 6.1 C from 1 January
	w := OfDays(cal.Of(2027, 1, 1), even(365, 16.1))
	told := eventDates(r.Fired(w, Options{}))
	seen := eventDates(r.Fired(w, Options{Seen: told["first_flight"] - 10}))
	if got := told["second_flight"] - seen["second_flight"]; got < 9 || got > 11 {
		t.Errorf("the second flight comes %d days sooner", got)
	}
	late := eventDates(r.Fired(w, Options{Seen: told["first_flight"] + 10}))
	if later := late["second_flight"] - told["second_flight"]; late["first_flight"] != told["first_flight"] || later < 9 || later > 11 {
		t.Errorf("seen late: %v, told %v", late, told)
	}
}

func TestFlightsAndWhatTheyMeet(t *testing.T) {
	r := ruleNamed(t, "carrot-fly")
	first := cal.Of(2027, 1, 1)
	comings := r.Comings([][]climate.Day{even(365, 15), even(365, 12), even(365, 3)}, first, Options{})
	if len(comings) != 5 || comings[0].Event.Name != "first_flight" || comings[0].Odds() != 2./3 {
		t.Fatalf("%d comings, the first %+v", len(comings), comings[0])
	}
	if got := comings[0].Quantile(0); got != cal.Of(2027, 3, 26) {
		t.Errorf("first in the warm future: %s", got)
	}
	if comings[0].Quantile(0.9).IsSet() {
		t.Error("it comes in two futures of three, and yet in nine of ten")
	}
	f := Flights(comings)[0]
	if f.Number != 1 || f.From[0] != cal.Of(2027, 3, 26) || f.Until[0] != cal.Of(2027, 4, 25) || f.From[2].IsSet() {
		t.Errorf("%+v", f) // 560 C d, its published end, on the 56th day from 1 March
	}
	for _, c := range []struct {
		stays []Stay
		want  float64
	}{
		{[]Stay{{cal.Of(2027, 3, 1), cal.Of(2027, 10, 1)}}, 2. / 3},
		{[]Stay{{cal.Of(2027, 4, 24), cal.Of(2027, 6, 1)}}, 1. / 3}, // one day of the warm future's
		{[]Stay{{cal.Of(2027, 3, 27), cal.Of(2027, 3, 30)}}, 1. / 3},
		{nil, 0},
	} {
		if got := f.Meets(c.stays); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %v, want %v", c.stays, got, c.want)
		}
	}
}

func TestJoinedDaysSayWhatTheyAreMadeOf(t *testing.T) {
	day := cal.Of(2027, 7, 1)
	var hours []climate.Hour
	for i := range 30 { // a day, and six hours of the next
		hours = append(hours, climate.Hour{Date: day + cal.Date(i/24), Hour: i % 24, TempC: 15, HumidityPct: 95, RainMM: math.NaN(), WindMS: math.NaN()})
	}
	record := &climate.Record{}
	for i := range 4 {
		o := climate.Observation{Date: day - 1 + cal.Date(i), TMinC: climate.Is(10), TMaxC: climate.Is(20)}
		if i == 2 {
			o.HumidityPct = climate.Is(80)
		}
		record.Days = append(record.Days, o)
	}
	w := Join(hours, record, day-1, day+2)
	if len(w.Days) != 3 || w.Estimated {
		t.Fatalf("%+v", w.Days)
	}
	for i, want := range []Day{{Date: day - 1, Made: true, Guessed: true}, {Date: day}, {Date: day + 1, Made: true}} {
		if d := w.Days[i]; d.Date != want.Date || d.Made != want.Made || d.Guessed != want.Guessed || len(w.of(&d)) != 24 {
			t.Errorf("day %d: %+v", i, d)
		}
	}
	daily := Daily(&climate.Record{Days: record.Days[2:]}, hours)
	if len(daily.Days) != 3 || daily.Days[0].Date != day || daily.Days[0].TMinC.Value != 15 || daily.Days[1].HumidityPct.Value != 80 {
		t.Errorf("days of hours: %+v", daily.Days)
	}
}
