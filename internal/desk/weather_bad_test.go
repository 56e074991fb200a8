package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
)

// daysAndHours are forty made-up days from 1 May 2026, as days and as hours;
// change changes what stands on a day.
func daysAndHours(change func(i int, temp, rain, wind *float64) (times int)) (days, hours string) {
	var d, h strings.Builder
	d.WriteString("date,tmin_c,tmax_c,rain_mm,wind_ms\n")
	h.WriteString("time,temp_c,rain_mm,wind_ms\n")
	for i := range 40 {
		temp, rain, wind, times := 12.0, 3.0, 2.0, 1
		if change != nil {
			times = change(i, &temp, &rain, &wind)
		}
		date := cal.Of(2026, 5, 1) + cal.Date(i)
		for range times {
			fmt.Fprintf(&d, "%v,%.1f,%.1f,%.2f,%.1f\n", date, temp-4, temp+4, rain, wind)
			for hour := range 24 {
				fmt.Fprintf(&h, "%vT%02d:00,%.1f,%.4f,%.1f\n", date, hour, temp-4+float64(hour)/3, rain/24, wind)
			}
		}
	}
	return d.String(), h.String()
}

// A file of days or of hours with something wrong in it leaves the holding as it was;
// asked for, its good rows are kept; one in another unit never is; a gap is no hindrance.
func TestBadWeatherIsNeverHalfKept(t *testing.T) {
	const asked, never, odd = "on request", "never", "told only"
	for name, c := range map[string]struct {
		change func(i int, temp, rain, wind *float64) int
		taken  string
		days   int // kept in the end
	}{
		"a gap": {func(i int, _, _, _ *float64) int {
			if i == 9 {
				return 0
			}
			return 1
		}, odd, 39},
		"a day twice": {func(i int, _, _, _ *float64) int {
			if i == 9 {
				return 2
			}
			return 1
		}, asked, 40},
		"Fahrenheit": {func(_ int, temp, _, _ *float64) int { *temp = *temp*1.8 + 32; return 1 }, never, 0},
		"inches":     {func(_ int, _, rain, _ *float64) int { *rain /= 25.4; return 1 }, never, 0},
		"km/h":       {func(_ int, _, _, wind *float64) int { *wind = 4 * 3.6; return 1 }, never, 0},
		"a day that jumps by 20 C": {func(i int, temp, _, _ *float64) int {
			if i == 9 {
				*temp += 20.5
			}
			return 1
		}, asked, 40},
		"a station that jumps by 20 C": {func(i int, temp, _, _ *float64) int {
			if i >= 20 {
				*temp += 20.5
			}
			return 1
		}, asked, 40},
	} {
		days, hours := daysAndHours(c.change)
		for kind, text := range map[string]string{"days": days, "hours": hours} {
			o := office(t)
			start := export(t, o)
			f := readText(t, o, kind+".csv", text)
			if c.taken == odd && (len(f.Warnings) == 0 || f.Faulty()) {
				t.Errorf("%s, %s: told %v", name, kind, f.Warnings)
			}
			if c.taken != odd {
				_, err := o.TakeWeather(by("a"), []*desk.WeatherFound{f}, desk.WeatherTake{})
				if list, ok := err.(fault.List); !ok || len(list) == 0 || export(t, o) != start {
					t.Errorf("%s, %s: something was kept, %v", name, kind, err)
				}
			}
			e, err := o.TakeWeather(by("b"), []*desk.WeatherFound{f}, desk.WeatherTake{KeepGood: c.taken != odd})
			if c.taken == never {
				if err == nil || export(t, o) != start {
					t.Errorf("%s, %s: kept", name, kind)
				}
				continue
			}
			h, after := o.Holding()
			if err != nil || after != nil || len(e.Changes) == 0 {
				t.Errorf("%s, %s: %v %v", name, kind, err, after)
				continue
			}
			if kept := h.Files[len(h.Files)-1]; len(kept.Record.Days) != c.days {
				t.Errorf("%s, %s: %d days are kept, not %d", name, kind, len(kept.Record.Days), c.days)
			}
			if _, err := o.Undo(by("c"), "b"); err != nil || export(t, o) != start {
				t.Errorf("%s, %s: undone, and not as it was: %v", name, kind, err)
			}
		}
	}
}

// Hours that are pasted are held to the same: none in another unit, none that jump unless
// the good ones are to be kept, and by the holding's clock where they tell a zone.
func TestPastedHoursAreJudged(t *testing.T) {
	o := office(t)
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	source, start := h.Weather[0].ID, export(t, o)
	hoursOf := func(change func(i int, temp, rain, wind *float64) int) string {
		_, text := daysAndHours(change)
		return text
	}
	for name, text := range map[string]string{
		"Fahrenheit": hoursOf(func(_ int, temp, _, _ *float64) int { *temp = *temp*1.8 + 32; return 1 }),
		"inches":     hoursOf(func(_ int, _, rain, _ *float64) int { *rain /= 25.4; return 1 }),
		"km/h":       hoursOf(func(_ int, _, _, wind *float64) int { *wind = 4 * 3.6; return 1 }),
	} {
		if _, err := o.AddHours(by("a"), source, text, true); err == nil || export(t, o) != start {
			t.Errorf("%s: kept, %v", name, err)
		}
	}
	spiky := "time,temp_c\n2026-06-01T10:00Z,12\n2026-06-01T11:00Z,45\n2026-06-01T12:00Z,13\n"
	if _, err := o.AddHours(by("b"), source, spiky, false); err == nil || export(t, o) != start {
		t.Errorf("a spike was kept, %v", err)
	}
	if _, err := o.AddHours(by("c"), source, spiky, true); err != nil {
		t.Fatal(err)
	}
	if h, err = o.Holding(); err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, x := range h.Weather[0].Hours {
		if x.Date == cal.Of(2026, 6, 1) {
			got = append(got, fmt.Sprintf("%d %g", x.Hour, x.TempC))
		}
	}
	if s := strings.Join(got, ", "); s != "11 12, 12 NaN, 13 13" {
		t.Errorf("by the clock of %s the hours are %s", h.Zone, s)
	}
}
