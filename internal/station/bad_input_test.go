package station_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/station"
)

// hour is one hour of a made-up record before it is written.
type hour struct {
	at               time.Time
	temp, rain, wind float64
	zone             string // Z, +02:00 and so on; blank: none
	skip, twice      bool
}

// madeHours is a made-up record of 90 days from a date: a wave of 8 C about 12 C by the
// hour, 2 mm of rain at noon of each second day, wind of 2 m/s; change changes an hour.
func madeHours(first cal.Date, change func(i int, h *hour)) string {
	var b strings.Builder
	b.WriteString("time,temp_c,rain_mm,wind_ms\n")
	start := time.Unix(int64(first)*86400, 0).UTC()
	for i := range 90 * 24 {
		h := hour{at: start.Add(time.Duration(i) * time.Hour), temp: 12 - 8*math.Cos(2*math.Pi*float64(i%24)/24), wind: 2}
		if i%48 == 12 {
			h.rain = 2
		}
		if change != nil {
			change(i, &h)
		}
		line := fmt.Sprintf("%s%s,%.1f,%.2f,%.1f\n", h.at.Format("2006-01-02T15:04"), h.zone, h.temp, h.rain, h.wind)
		if h.twice {
			b.WriteString(line)
		}
		if !h.skip {
			b.WriteString(line)
		}
	}
	return b.String()
}

// all is what was told of a file: w, r, d and o for what makes it unfit, what was
// refused, what is doubtful and what is only odd. Values that cannot be are many in
// Fahrenheit, and told as one here.
func all(f *station.Found) string {
	var out []string
	for _, of := range []struct {
		mark string
		list []string
	}{{"w", told(f.Wrong)}, {"r", told(f.Refused)}, {"d", told(f.Doubtful)}, {"o", told(f.Warnings)}} {
		for _, s := range of.list {
			if strings.HasSuffix(s, "value_impossible") {
				if s = "value_impossible"; slices.Contains(out, of.mark+" "+s) {
					continue
				}
			}
			out = append(out, of.mark+" "+strings.ReplaceAll(s, "station.", ""))
		}
	}
	return strings.Join(out, "; ")
}

// What is wrong with a file of days is told at its row, and nothing else is.
func TestDaysOfAFileThatAreWrong(t *testing.T) {
	sound := madeDays(nil)
	for name, c := range map[string]struct{ text, want string }{
		"sound":          {sound, ""},
		"a gap":          {without(sound, 100, 103), "o 101::days_missing"},
		"a day twice":    {again(sound, 100), "r 102:date:date_twice"},
		"Fahrenheit":     {madeDays(func(_ int, tMin, tMax, _, _ *float64) { *tMin, *tMax = *tMin*1.8+32, *tMax*1.8+32 }), "w 0:tmax_c:looks_fahrenheit; r value_impossible"},
		"inches":         {madeDays(func(_ int, _, _, rain, _ *float64) { *rain /= 25.4 }), "w 0:rain_mm:looks_inches"},
		"km/h, windy":    {madeDays(func(_ int, _, _, _, wind *float64) { *wind = 4 * 3.6 }), "w 0:wind_ms:looks_kmh"},
		"km/h, calm":     {madeDays(func(_ int, _, _, _, wind *float64) { *wind = 2 * 3.6 }), "o 0:wind_ms:windy"},
		"a day off":      {madeDays(jumps(200, 201)), "d 202:tmin_c:day_spike; d 202:tmax_c:day_spike"},
		"three days off": {madeDays(jumps(200, 203)), "o 202:tmin_c:day_leap; o 205:tmin_c:day_leap"},
		"the last three": {madeDays(jumps(3*365-3, 3*365)), "o 1094:tmin_c:day_leap"},
		"a month off":    {madeDays(jumps(200, 230)), "d 202:tmin_c:step"},
	} {
		if got := all(readAs(t, station.DailyCSV, "d.csv", c.text, station.Options{})); got != c.want {
			t.Errorf("%s: %q, not %q", name, got, c.want)
		}
	}
}

// jumps puts some days 21 C higher.
func jumps(from, until int) func(i int, tMin, tMax, rain, wind *float64) {
	return func(i int, tMin, tMax, _, _ *float64) {
		if i >= from && i < until {
			*tMin, *tMax = *tMin+21, *tMax+21
		}
	}
}

// without leaves out the rows from one number on up to another, the header being 1.
func without(text string, from, until int) string {
	lines := strings.SplitAfter(text, "\n")
	return strings.Join(append(lines[:from:from], lines[until:]...), "")
}

// again writes a row twice.
func again(text string, row int) string {
	lines := strings.SplitAfter(text, "\n")
	return strings.Join(append(lines[:row+1:row+1], lines[row:]...), "")
}

// What is wrong with a file of hours is told at its row, and nothing else is: by the
// clock of London, where the clocks of 2026 change on 29 March and 25 October.
func TestHoursOfAFileThatAreWrong(t *testing.T) {
	spring, autumn := cal.Of(2026, 3, 1), cal.Of(2026, 10, 1)
	london, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		first  cal.Date
		change func(i int, h *hour)
		want   string
		days   int
	}{
		"sound":         {spring, nil, "", 90},
		"a gap":         {spring, func(i int, h *hour) { h.skip = i >= 100 && i < 105 }, "o 0::part_days; o 102:time:hours_missing; o 117::days_missing", 89},
		"an hour lost":  {spring, func(i int, h *hour) { h.skip = i == 100 }, "o 102:time:hours_missing", 90},
		"an hour twice": {spring, func(i int, h *hour) { h.twice = i == 100 }, "r 103:time:hour_twice", 90},
		"Fahrenheit":    {spring, func(_ int, h *hour) { h.temp = h.temp*1.8 + 32 }, "w 0:temp_c:hours_look_fahrenheit; r value_impossible", 90},
		"inches":        {spring, func(_ int, h *hour) { h.rain /= 25.4 }, "w 0:rain_mm:looks_inches", 90},
		"km/h, windy":   {spring, func(_ int, h *hour) { h.wind = 4 * 3.6 }, "w 0:wind_ms:looks_kmh", 90},
		"km/h, calm":    {spring, func(_ int, h *hour) { h.wind = 2 * 3.6 }, "o 0:wind_ms:windy", 90},
		"in UTC":        {spring, func(_ int, h *hour) { h.zone = "Z" }, "o 0::part_days", 90},
		"by London's clock, with its offsets": {spring, func(_ int, h *hour) {
			h.at = h.at.In(london)
			h.zone = h.at.Format("-07:00")
		}, "o 0::part_days", 90},
		"by India's clock, with its offset": {spring, func(i int, h *hour) {
			h.zone = "+05:30"
		}, "o 0::part_days", 89},
		"spring forward": {spring, func(_ int, h *hour) { h.at = h.at.In(london) }, "o 0::part_days; o 675:time:hour_missing_clock", 90},
		"autumn back":    {autumn, func(_ int, h *hour) { h.at = h.at.In(london) }, "r 579:time:hour_twice_clock", 90},
		"an hour off": {spring, func(i int, h *hour) {
			if i == 100 {
				h.temp += 25
			}
		}, "d 102:temp_c:spike_left_out", 90},
		"three days off": {spring, func(i int, h *hour) {
			if i >= 240 && i < 312 {
				h.temp += 25
			}
		}, "o 242:temp_c:jump; o 242:tmin_c:day_leap; o 314:temp_c:jump; o 314:tmin_c:day_leap", 90},
		"a month off": {spring, func(i int, h *hour) {
			if i >= 240 && i < 960 {
				h.temp += 25
			}
		}, "d 242:tmin_c:step; o 242:temp_c:jump; o 962:temp_c:jump", 90},
	} {
		f := readAs(t, station.HourlyCSV, "h.csv", madeHours(c.first, c.change), station.Options{Clock: clockOf(t, "Europe/London")})
		if got := all(f); got != c.want || len(f.Days.Days) != c.days {
			t.Errorf("%s: %d days, %q, not %d, %q", name, len(f.Days.Days), got, c.days, c.want)
		}
	}
}

// Hours for a site are by its clock, whatever zone they were written by; one without a
// zone among others is by the site's own.
func TestHoursBySitesClock(t *testing.T) {
	for name, c := range map[string]struct{ rows, want string }{
		"no zone":        {"2026-07-01T05:00,12", "2026-07-01 5 12"},
		"UTC":            {"2026-07-01T23:00Z,12", "2026-07-02 0 12"},
		"of India":       {"2026-07-01T05:30+05:30,12", ""},
		"of the west":    {"2026-07-01T20:00-05:00,12", "2026-07-02 2 12"},
		"one without":    {"2026-07-01T05:00,12\n2026-07-01T05:00Z,13", "2026-07-01 5 12 2026-07-01 6 13"},
		"the hour twice": {"2026-10-25T01:00+01:00,10\n2026-10-25T01:00+00:00,12", "2026-10-25 1 11"},
	} {
		hours, _, err := station.ReadHourlyBy(strings.NewReader("time,temp_c\n"+c.rows+"\n"), "h.csv", clockOf(t, "Europe/London"))
		if (err != nil) != (c.want == "") {
			t.Errorf("%s: %v", name, err)
		}
		var got []string
		for _, h := range hours {
			got = append(got, fmt.Sprintf("%v %d %g", h.Date, h.Hour, h.TempC))
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %q, not %q", name, s, c.want)
		}
	}
}
