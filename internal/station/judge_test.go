package station_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/station"
)

func faultsIn(err error) fault.List {
	var many fault.List
	var one *fault.Error
	switch {
	case errors.As(err, &many):
		return many
	case errors.As(err, &one):
		return fault.List{one}
	}
	return nil
}

// madeDays is a made-up record of three years from 2021: a wave about 10 C, rain of 4
// mm on each third day, wind of 3 m/s; change changes a day.
func madeDays(change func(i int, tMin, tMax, rain, wind *float64)) string {
	var b strings.Builder
	b.WriteString("date,tmin_c,tmax_c,rain_mm,wind_ms\n")
	for i := range 3 * 365 {
		mean := 10 - 8*math.Cos(2*math.Pi*float64(i)/365)
		tMin, tMax, rain, wind := mean-4, mean+4, 0.0, 3.0
		if i%3 == 0 {
			rain = 4
		}
		if change != nil {
			change(i, &tMin, &tMax, &rain, &wind)
		}
		fmt.Fprintf(&b, "%v,%.1f,%.1f,%.2f,%.1f\n", cal.Of(2021, 1, 1)+cal.Date(i), tMin, tMax, rain, wind)
	}
	return b.String()
}

func TestASoundRecordIsNotDoubted(t *testing.T) {
	f := readAs(t, station.DailyCSV, "d.csv", madeDays(nil), station.Options{})
	if n := len(f.Wrong) + len(f.Refused) + len(f.Doubtful) + len(f.Warnings); n > 0 {
		t.Errorf("%v %v %v %v", f.Wrong, f.Refused, f.Doubtful, f.Warnings)
	}
}

// Each mix-up is told by its own name, and only by it.
func TestMixUpsOfUnits(t *testing.T) {
	for want, change := range map[string]func(i int, tMin, tMax, rain, wind *float64){
		"station.looks_inches":  func(_ int, _, _, rain, _ *float64) { *rain /= 25.4 },
		"station.looks_kmh":     func(_ int, _, _, _, wind *float64) { *wind *= 3.6; *wind += 3 },
		"station.looks_swapped": func(_ int, tMin, tMax, _, _ *float64) { *tMin, *tMax = *tMax, *tMin },
		"station.looks_fahrenheit": func(_ int, tMin, tMax, _, _ *float64) {
			*tMin, *tMax = *tMin*1.8+32, *tMax*1.8+32
		},
	} {
		f := readAs(t, station.DailyCSV, "d.csv", madeDays(change), station.Options{})
		if len(f.Wrong) != 1 || f.Wrong[0].Phrase.Key != want {
			t.Errorf("%s: told %v", want, f.Wrong)
		}
	}
}

// A day that jumps by 20 C and back is doubtful, at its row, and goes when only
// good values are kept.
func TestADayThatJumps(t *testing.T) {
	f := readAs(t, station.DailyCSV, "d.csv", madeDays(func(i int, _, tMax, _, _ *float64) {
		if i == 200 {
			*tMax += 20.5
		}
	}), station.Options{})
	if got := strings.Join(told(f.Doubtful), " "); got != "202:tmax_c:station.day_spike" {
		t.Fatalf("doubtful %s", got)
	}
	f.DropDoubtful()
	if o := dayOf(t, f, cal.Of(2021, 1, 1)+200); o.TMaxC.Known || !o.TMinC.Known || len(f.Days.Days) != 3*365 {
		t.Errorf("%+v", o)
	}
}

// A station that steps by 20 C and stays there is doubtful from there to the step
// back, or to its end.
func TestAStationThatSteps(t *testing.T) {
	for until, n := range map[int]int{400: 200, 3 * 365: 3*365 - 200} {
		f := readAs(t, station.DailyCSV, "d.csv", madeDays(func(i int, tMin, tMax, _, _ *float64) {
			if i >= 200 && i < until {
				*tMin, *tMax = *tMin+20, *tMax+20
			}
		}), station.Options{})
		if got := strings.Join(told(f.Doubtful), " "); got != "202:tmin_c:station.step" || f.Doubtful[0].Phrase.Args["n"] != n {
			t.Fatalf("until %d: doubtful %s, %v", until, got, f.Doubtful[0].Phrase.Args)
		}
		f.DropDoubtful()
		if o := dayOf(t, f, cal.Of(2021, 1, 1)+250); o.TMinC.Known || o.TMaxC.Known || !o.RainMM.Known {
			t.Errorf("%+v", o)
		}
		if o := dayOf(t, f, cal.Of(2021, 1, 1)+199); !o.TMinC.Known {
			t.Errorf("%+v", o)
		}
	}
}

func TestGapsAndDuplicatesOfDays(t *testing.T) {
	f := readAs(t, station.DailyCSV, "d.csv", "date,tmin_c,tmax_c\n2021-01-01,1,5\n2021-01-04,1,5\n2021-01-04,2,6\n2021-01-05,x,5\n", station.Options{})
	if got := strings.Join(told(append(f.Warnings, f.Refused...)), " "); got != "3::station.days_missing 4:date:station.date_twice 5:tmin_c:station.not_a_number" {
		t.Error(got)
	}
}

func TestGHCNTellsWhatItCannotRead(t *testing.T) {
	line := func(head, values string) string { return head + values + "\n" }
	text := line("XX000000001202102TMAX", "  120     abc     9990     -9999   ") +
		line("XX000000001202102TMIN", "  130   ") +
		line("XX000000001202102TMAX", "  120   ") +
		line("XX000000001202113TMAX", "  120   ") +
		line("XX000000002202102TMAX", "  120   ") +
		line("hello", "") +
		line("XX000000001202102PRCP", strings.Repeat("-9999   ", 28)+"   12   -9999   ")
	f := readAs(t, station.GHCNDaily, "g.dly", text, station.Options{})
	want := "1:TMAX 2:station.not_whole 1:TMAX 3:station.value_impossible 1:TMIN:station.minimum_above_maximum 3:TMAX:station.ghcn_line_twice " +
		"4:TMAX:station.ghcn_month 5::station.other_station 6::station.ghcn_line 7:PRCP 29:station.no_such_day"
	if got := strings.Join(told(f.Refused), " "); got != want {
		t.Errorf("refused %s", got)
	}
}

func TestISDLiteTellsWhatItCannotRead(t *testing.T) {
	var b strings.Builder
	for hour := range 24 {
		fmt.Fprintf(&b, "2021 06 01 %02d 150 100 10000 0 10 0 0 -9999\n", hour)
	}
	b.WriteString("2021 06 01 23 150 100 10000 0 10 0 0 -9999\n2021 06 01 03 150 100 10000 0 10 0 0 -9999\n2021 06 02 24 150 100 10000 0 10 0 0 -9999\n" +
		"2021 06 02\n2021 06 02 00 9990 100 10000 0 10 0 0 -9999\n2021 06 02 01 x 100 10000 0 10 0 0 -9999\n2021 06 02 02 50 100 10000 0 10 0 0 -9999\n")
	f := readAs(t, station.ISDLite, "x", b.String(), station.Options{})
	want := "25::station.hour_again 26::station.hour_out_of_order 27::station.isd_time 28::station.isd_line 29:air temperature:station.value_impossible " +
		"30:air temperature:station.not_whole 31:dew point:station.dew_above_air"
	if got := strings.Join(told(f.Refused), " "); got != want {
		t.Errorf("refused %s", got)
	}
}

// The hours of a day by another zone belong to the day of the site's clock, and an
// hour that jumps by 20 C and back does not make the day's maximum.
func TestHoursToDays(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,temp_c,rain_mm,rad_mj_m2\n")
	for hour := range 72 {
		temp := 10.0
		if hour == 30 {
			temp = 35
		}
		fmt.Fprintf(&b, "2026-07-%02dT%02d:00Z,%g,1,0.36\n", 1+hour/24, hour%24, temp)
	}
	f := readAs(t, station.HourlyCSV, "h.csv", b.String(), station.Options{Clock: clockOf(t, "Australia/Hobart")})
	if got := strings.Join(told(f.Doubtful), " "); got != "32:temp_c:station.spike_left_out" {
		t.Errorf("doubtful %s", got)
	}
	first, last := f.Period()
	if first != cal.Of(2026, 7, 2) || last != cal.Of(2026, 7, 3) { // 10 hours ahead: only two days are whole
		t.Errorf("%v to %v", first, last)
	}
	if o := f.Days.Days[0]; o.TMaxC.Value != 10 || o.RainMM.Value != 24 || math.Abs(o.RadiationMJ.Value-8.64) > 1e-9 {
		t.Errorf("%+v", o)
	}
}
