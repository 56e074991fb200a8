package station_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // as in the program, so that zones are known on any machine

	"garner/internal/cal"
	"garner/internal/station"
)

// isdHours are lines of ISD-Lite every so many hours from a moment on: 15 C, a dew
// point of 13 C, wind of 2 m/s, and 1 mm of rain in the hour before noon UTC.
func isdHours(from time.Time, hours, step int) string {
	var b strings.Builder
	for h := 0; h < hours; h += step {
		at, rain := from.Add(time.Duration(h)*time.Hour), 0
		if at.Hour() == 12 {
			rain = 10
		}
		fmt.Fprintf(&b, "%4d %02d %02d %02d %5d %5d %5d %5d %5d %5d %5d %5d\n", at.Year(), at.Month(), at.Day(), at.Hour(), 150, 130, 10130, 180, 20, 4, rain, -9999)
	}
	return b.String()
}

// Hours in UTC become those of the site's clock, their humidity from the dew point
// (15 and 13 C: 1.4975 of 1.7053 kPa by FAO-56 eq. 11, 87.8 %), and the rain of the
// hour before a moment that of the hour before.
func TestHoursOfISDLite(t *testing.T) {
	ahead := func(int64) int64 { return 2 * 3600 }
	f := readAs(t, station.ISDLite, "720000-99999-2027.txt", isdHours(time.Date(2027, 7, 1, 0, 0, 0, 0, time.UTC), 48, 1), station.Options{Clock: ahead})
	if len(f.Hours) != 48 || f.Hours[0].Date != cal.Of(2027, 7, 1) || f.Hours[0].Hour != 2 {
		t.Fatalf("%d hours from %+v", len(f.Hours), f.Hours[0])
	}
	for i := range f.Hours {
		h := &f.Hours[i]
		if h.TempC != 15 || math.Abs(h.HumidityPct-87.8) > 0.05 {
			t.Fatalf("%+v", h)
		}
		if want := map[bool]float64{true: 1, false: 0}[h.Hour == 13]; h.RainMM != want && i < 47 {
			t.Errorf("%g mm at %d o'clock, want %g", h.RainMM, h.Hour, want)
		}
	}
}

// Of a record of every third hour no hour is told, and no day counts.
func TestThirdHoursTellNoHours(t *testing.T) {
	f := readAs(t, station.ISDLite, "720000-99999-2027.txt", isdHours(time.Date(2027, 7, 1, 0, 0, 0, 0, time.UTC), 96, 3), station.Options{})
	if len(f.Hours) != 0 || len(f.Days.Days) == 0 {
		t.Errorf("%d hours and %d days", len(f.Hours), len(f.Days.Days))
	}
}

// An archive's rows are averaged to hours and their rain summed; where two of six are
// missing the hour stands, where more are it is not known.
func TestHoursOfAnArchive(t *testing.T) {
	from := time.Date(2027, 7, 1, 0, 10, 0, 0, time.UTC)
	var b strings.Builder
	b.WriteString("dateTime,usUnits,interval,outTemp,outHumidity,rain,windSpeed,radiation\n")
	for i := range 6 * 24 {
		if hour, part := i/6, i%6; hour == 5 && part > 3 || hour == 6 && part > 1 {
			continue
		}
		fmt.Fprintf(&b, "%d,17,10,%d,90,0.1,1,0\n", from.Add(time.Duration(i)*10*time.Minute).Unix(), 10+i%6)
	}
	f := readAs(t, station.Archive, "a.csv", b.String(), station.Options{})
	if len(f.Hours) != 23 {
		t.Fatalf("%d hours, want all but the seventh", len(f.Hours))
	}
	if h := f.Hours[4]; h.Hour != 4 || h.TempC != 12.5 || h.RainMM != 0.6 || h.HumidityPct != 90 {
		t.Errorf("%+v", h)
	}
	if h := f.Hours[5]; h.Hour != 5 || h.TempC != 11.5 || h.RainMM != 0.4 {
		t.Errorf("%+v", h)
	}
}

// Where the clock goes back, the hour that comes twice is both together, and the
// day has 24; where it goes forward it has 23, and counts.
func TestHoursWhereTheClockChanges(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	clock := func(at int64) int64 { _, ahead := time.Unix(at, 0).In(zone).Zone(); return int64(ahead) }
	for day, want := range map[cal.Date]int{cal.Of(2027, 10, 31): 24, cal.Of(2027, 3, 28): 23} {
		y, m, d := day.YMD()
		text := isdHours(time.Date(y, time.Month(m), d-1, 0, 0, 0, 0, time.UTC), 72, 1)
		f := readAs(t, station.ISDLite, "720000-99999-2027.txt", text, station.Options{Clock: clock})
		n := 0
		for i := range f.Hours {
			if f.Hours[i].Date == day {
				n++
			}
			if i > 0 && f.Hours[i].At() <= f.Hours[i-1].At() {
				t.Fatalf("hours out of order at %+v", f.Hours[i])
			}
		}
		if n != want {
			t.Errorf("%s has %d hours, want %d", day, n, want)
		}
	}
}

// Hours of days that are left out as doubtful go with them; a spike within hours
// takes its own hour alone.
func TestHoursOfDoubtfulDaysGo(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,temp_c\n")
	for h := range 24 * 40 {
		c := 10
		switch day := h / 24; {
		case day >= 20:
			c = 34 // it steps to another level and stays there
		case h == 30:
			c = 40
		}
		fmt.Fprintf(&b, "%sT%02d:00,%d\n", cal.Of(2027, 3, 1)+cal.Date(h/24), h%24, c)
	}
	f := readAs(t, station.HourlyCSV, "h.csv", b.String(), station.Options{})
	if len(f.Doubtful) != 2 || len(f.Hours) != 24*40-1 {
		t.Fatalf("%v, %d hours", f.Doubtful, len(f.Hours))
	}
	f.DropDoubtful()
	if len(f.Hours) != 24*20-1 || f.Hours[len(f.Hours)-1].TempC != 10 {
		t.Errorf("%d hours are left", len(f.Hours))
	}
}
