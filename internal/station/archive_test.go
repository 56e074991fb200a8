package station_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/station"
)

// clockOf is the clock of a time zone.
func clockOf(t testing.TB, name string) station.Clock {
	t.Helper()
	zone, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return func(at int64) int64 {
		_, ahead := time.Unix(at, 0).In(zone).Zone()
		return int64(ahead)
	}
}

// archiveOf writes an archive of a row every half hour between two moments; row
// gives what comes after the interval.
func archiveOf(units int, from, until time.Time, row func(at time.Time) string) string {
	var b strings.Builder
	b.WriteString("dateTime,usUnits,interval,outTemp,outHumidity,rain,windSpeed,radiation\n")
	for at := from; !at.After(until); at = at.Add(30 * time.Minute) {
		fmt.Fprintf(&b, "%d,%d,30,%s\n", at.Unix(), units, row(at))
	}
	return b.String()
}

// The same weather in the three systems of units comes to the same day: 50 F is
// 10 C, 0.1 inch 2.54 mm, 10 miles an hour 4.4704 m/s (exact by definition).
func TestArchiveUnits(t *testing.T) {
	from := time.Date(2026, 6, 1, 0, 30, 0, 0, time.UTC)
	for units, cells := range map[int]string{
		1: "50,60,0.1,10,100", 16: "10,60,0.254,16.09344,100", 17: "10,60,2.54,4.4704,100",
	} {
		f := readAs(t, station.Archive, "a.csv", archiveOf(units, from, from.Add(47*30*time.Minute), func(time.Time) string { return cells }), station.Options{})
		o := dayOf(t, f, cal.Of(2026, 6, 1))
		if o.TMinC != climate.Is(10) || o.TMaxC != climate.Is(10) || math.Abs(o.RainMM.Value-48*2.54) > 1e-9 || o.WindMS != climate.Is(4.47) ||
			o.HumidityPct != climate.Is(60) || o.RadiationMJ != climate.Is(8.64) || len(f.Refused) > 0 {
			t.Errorf("units %d: %+v refused %v", units, o, f.Refused)
		}
	}
}

// By the clock of London, 29 March 2026 has 23 hours and 25 October 25. Rain of 1
// mm an hour tells how many hours a day was given, and the temperature at each
// local midnight marks the edge.
func TestArchiveDaysOfDaylightSaving(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		day   time.Time
		hours float64
	}{
		{time.Date(2026, 3, 29, 0, 0, 0, 0, zone), 23}, {time.Date(2026, 10, 25, 0, 0, 0, 0, zone), 25}, {time.Date(2026, 7, 1, 0, 0, 0, 0, zone), 24},
	} {
		from, until := c.day.AddDate(0, 0, -1), c.day.AddDate(0, 0, 2)
		text := archiveOf(17, from.Add(30*time.Minute), until, func(at time.Time) string {
			return fmt.Sprintf("%d,,0.5,,", at.Add(-time.Minute).In(zone).Day()%10)
		})
		f := readAs(t, station.Archive, "a.csv", text, station.Options{Clock: clockOf(t, "Europe/London")})
		if len(f.Days.Days) != 3 || len(f.Refused)+len(f.Warnings) > 0 {
			t.Errorf("%v: %d days, %v %v", c.day, len(f.Days.Days), f.Refused, f.Warnings)
		}
		o := dayOf(t, f, cal.Of(c.day.Year(), int(c.day.Month()), c.day.Day()))
		if edge := float64(c.day.Day() % 10); o.RainMM.Value != c.hours || o.TMinC.Value != edge || o.TMaxC.Value != edge {
			t.Errorf("%v: %+v", c.day, o)
		}
	}
}

// A day that is not over is not a day, whichever hours are missing.
func TestArchiveLeavesPartDaysOut(t *testing.T) {
	from := time.Date(2026, 6, 1, 0, 30, 0, 0, time.UTC)
	text := archiveOf(17, from, from.Add(70*30*time.Minute), func(time.Time) string { return "10,60,0,1,1" })
	f := readAs(t, station.Archive, "a.csv", text, station.Options{})
	if len(f.Days.Days) != 1 || len(f.Warnings) != 1 || f.Warnings[0].Phrase.Key != "station.part_days" {
		t.Errorf("%d days, %v", len(f.Days.Days), f.Warnings)
	}
}

func TestArchiveTellsEveryFault(t *testing.T) {
	text := `dateTime,usUnits,interval,outTemp,outHumidity,rain,windSpeed,radiation
soon,17,5,1,1,1,1,1
1780272300,17,5,10,60,0,1,1
1780272300,17,5,10,60,0,1,1
1780272000,17,5,10,60,0,1,1
1780272600,2,5,10,60,0,1,1
1780272900,17,0,10,60,0,1,1
1780273200,17,5,99,160,-1,1,9999
1780273500,17,5,x,60,0,1,1
1780273800,17,1440,10,60,NULL,,
`
	f := readAs(t, station.Archive, "a.csv", text, station.Options{})
	want := "2:dateTime:station.not_a_number 4:dateTime:station.archive_twice 5:dateTime:station.archive_order 6:usUnits:station.archive_units " +
		"7:interval:station.archive_interval 8:outTemp:station.value_impossible 8:outHumidity:station.value_impossible " +
		"8:rain:station.value_impossible 8:radiation:station.value_impossible 9:outTemp:station.not_a_number"
	if got := strings.Join(told(f.Refused), " "); got != want {
		t.Errorf("refused %s", got)
	}
}
