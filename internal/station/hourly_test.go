package station_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
)

func readHourly(t *testing.T, text string) ([]climate.Hour, station.Report) {
	t.Helper()
	hours, report, err := station.ReadHourly(strings.NewReader(text), "h.csv")
	if err != nil {
		t.Fatal(err)
	}
	return hours, report
}

func toldRows(list fault.List) (out []string) {
	for _, f := range list {
		out = append(out, fmt.Sprintf("%d %s", f.At.Row, strings.TrimPrefix(f.Phrase.Key, "station.")))
	}
	return out
}

// What is wrong with an hourly record is told at its row, and the rest is kept.
func TestHourlyFaultsAreToldAtTheirRows(t *testing.T) {
	cases := map[string]struct {
		rows              string
		kept              int
		refused, warnings string
	}{
		"clean":                 {"2027-07-01T00:00,12\n2027-07-01T01:00,11.5", 2, "", ""},
		"a gap":                 {"2027-07-01T00:00,12\n2027-07-01T05:00,11.5", 2, "", "3 hours_missing"},
		"an hour twice":         {"2027-07-01T00:00,12\n2027-07-01T00:00,11.5\n2027-07-01T01:00,11", 2, "3 hour_twice", ""},
		"out of order":          {"2027-07-01T00:00,12\n2027-07-01T09:00,11.5\n2027-07-01T01:00,11\n2027-07-01T02:00,11", 3, "3 hour_out_of_order", ""},
		"no such time":          {"2027-07-01T24:00,12\n01/07/2027 01:00,12\n2027-07-01T02:00,12", 1, "2 no_such_time; 3 no_such_time", ""},
		"between the hours":     {"2027-07-01T00:30,12\n2027-07-01T02:00,12", 1, "2 not_on_the_hour", ""},
		"no such value":         {"2027-07-01T00:00,99\n2027-07-01T01:00,x", 2, "2 value_impossible; 3 not_a_number", ""},
		"a spike":               {"2027-07-01T00:00,12\n2027-07-01T01:00,-40\n2027-07-01T02:00,11", 3, "", "3 spike"},
		"a step that stays":     {"2027-07-01T00:00,12\n2027-07-01T01:00,33\n2027-07-01T02:00,33", 3, "", "3 jump"},
		"clocks go forward":     {"2027-03-28T01:00,5\n2027-03-28T03:00,5", 2, "", "3 hour_missing_clock"},
		"clocks go back":        {"2027-10-31T01:00,5\n2027-10-31T01:00,5\n2027-10-31T02:00,5", 2, "3 hour_twice_clock", ""},
		"clocks go back, zoned": {"2027-10-31T02:00+02:00,5\n2027-10-31T02:00+01:00,5\n2027-10-31T03:00+01:00,5", 3, "", ""},
		"zones mixed":           {"2027-07-01T00:00Z,5\n2027-07-01T01:00,5", 2, "", "3 zones_mixed"},
		"no such zone":          {"2027-07-01T00:00+25:00,5\n2027-07-01T01:00Z,5", 1, "2 no_such_time", ""},
		"seconds and a space":   {"2027-07-01 00:00:00,5\n2027-07-01 01:00:00,5", 2, "", ""},
	}
	for name, c := range cases {
		hours, report := readHourly(t, "time,temp_c\n"+c.rows+"\n")
		if len(hours) != c.kept || report.Kept != c.kept {
			t.Errorf("%s: %d hours kept, want %d", name, len(hours), c.kept)
		}
		if got := strings.Join(toldRows(report.Refused), "; "); got != c.refused {
			t.Errorf("%s: refused %q, want %q", name, got, c.refused)
		}
		if got := strings.Join(toldRows(report.Warnings), "; "); got != c.warnings {
			t.Errorf("%s: warned %q, want %q", name, got, c.warnings)
		}
	}
}

// A spike stays unless it is asked to go; a step stays.
func TestSpikesGoWhenAskedTo(t *testing.T) {
	hours, _ := readHourly(t, "time,temp_c\n2027-07-01T00:00,12\n2027-07-01T01:00,-40\n2027-07-01T02:00,11\n2027-07-01T03:00,35\n2027-07-01T04:00,34\n")
	if hours[1].TempC != -40 {
		t.Errorf("the spike was changed to %g", hours[1].TempC)
	}
	if n := station.DropSpikes(hours); n != 1 || !math.IsNaN(hours[1].TempC) || hours[3].TempC != 35 {
		t.Errorf("%d were dropped: %v", n, hours)
	}
}

// Another unit shows over a few weeks.
func TestHourlyUnitsAreDoubted(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,temp_c,rh_pct\n")
	for i := range 24 * 30 {
		fmt.Fprintf(&b, "%sT%02d:00,%d,0.8\n", cal.Of(2027, 7, 1)+cal.Date(i/24), i%24, 55+i%20)
	}
	_, report := readHourly(t, b.String())
	if got := strings.Join(toldRows(report.Warnings), "; "); got != "0 hours_look_fahrenheit; 0 humidity_looks_share" {
		t.Errorf("warned %q", got)
	}
}

func TestHourlyValues(t *testing.T) {
	hours, _ := readHourly(t, "wind_ms;rain_mm;time;temp_c;rh_pct\n3,5;;2027-07-01T14:00Z;12,5;90\n")
	h := hours[0]
	if h.Date != cal.Of(2027, 7, 1) || h.Hour != 14 || h.TempC != 12.5 || h.HumidityPct != 90 || h.WindMS != 3.5 || !math.IsNaN(h.RainMM) || h.Row != 2 {
		t.Errorf("read %+v", h)
	}
	// 20 C and 50 %: a dew point of 9.3 C (psychrometric tables).
	if h = (climate.Hour{TempC: 20, HumidityPct: 50}); math.Abs(h.DewC()-9.3) > 0.05 {
		t.Errorf("dew point %g", h.DewC())
	}
}

// Whatever stands in an hourly file, what is kept rises, lies within limits and
// every fault has its file.
func FuzzReadHourly(f *testing.F) {
	f.Add([]byte("time,temp_c,rh_pct\n2027-07-01T00:00Z,12,90\n2027-07-01T01:00Z,,\n"))
	f.Add([]byte("time;temp_c\n2027-10-31 02:00+02:00;12,5\n2027-10-31 02:00+01:00;12\n2027-10-31 01:00;1\n"))
	f.Add([]byte("time,temp_c\n2027-07-01T,1\n2027-07-01T00:00:00.000-1,2\n9999-07-01T00:00,2\n"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		hours, report, err := station.ReadHourly(bytes.NewReader(raw), "h.csv")
		if err != nil {
			return
		}
		for _, x := range append(report.Refused, report.Warnings...) {
			if x.At.File == "" {
				t.Errorf("a fault without a file: %v", x)
			}
		}
		for i := range hours {
			h := &hours[i]
			if h.Hour < 0 || h.Hour > 23 || h.TempC < climate.LeastC || h.TempC > climate.MostC || i > 0 && h.At() < hours[i-1].At() {
				t.Errorf("hour %+v", h)
			}
		}
	})
}
