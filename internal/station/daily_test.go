package station_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
)

func readDaily(t *testing.T, text string) (*climate.Record, station.Report) {
	t.Helper()
	r, report, err := station.ReadDaily(strings.NewReader(text), "d.csv")
	if err != nil {
		t.Fatal(err)
	}
	return r, report
}

// told lists faults as row:column:key.
func told(faults fault.List) (out []string) {
	for _, f := range faults {
		out = append(out, fmt.Sprintf("%d:%s:%s", f.At.Row, f.At.Column, f.Phrase.Key))
	}
	return out
}

func TestDailyRefusesWhatCannotBeAndKeepsTheRest(t *testing.T) {
	r, report := readDaily(t, `Date,TMAX_C,tmin_c,rain_mm,sun_h,rad_mj_m2,rh_pct,dew_c,wind_ms,note
2027-01-01,5,1,0,1,2,80,1,3,frost
2027-01-02,1,5,2,1,2,80,1,3,swapped
2027-02-30,5,1,0,1,2,80,1,3,
2027-01-03,61,1,0,1,2,80,1,3,
2027-01-04,5,-81,-0.1,25,45.5,101,1,61,
2027-01-04,5,1,0,1,2,80,1,3,again
2027-03-09,5,1,0,1,2,80,1,3,slip
2027-01-05,5,1,x,,NA,80,6,3,
2027-01-06,5,1,0,1,2,80,1,3,
2027-01-07,5,1,0,1,2,80,1,3,,too many
`)
	want := []string{
		"3:tmin_c:station.minimum_above_maximum",
		"4:date:station.no_such_date",
		"5:tmax_c:station.value_impossible",
		"6:tmin_c:station.value_impossible",
		"6:rain_mm:station.value_impossible",
		"6:sun_h:station.value_impossible",
		"6:rad_mj_m2:station.value_impossible",
		"6:rh_pct:station.value_impossible",
		"6:wind_ms:station.value_impossible",
		"7:date:station.date_twice",
		"8:date:station.date_out_of_order",
		"9:rain_mm:station.not_a_number",
		"9:dew_c:station.dew_above_maximum",
		"11::table.too_many_cells",
	}
	if diff := cmp.Diff(want, told(report.Refused)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"1:note:station.column_unused"}, told(report.Warnings)); diff != "" {
		t.Error(diff)
	}
	if report.Rows != 10 || report.Kept != 6 || len(r.Days) != 6 {
		t.Errorf("rows %d, kept %d", report.Rows, report.Kept)
	}
	if d := r.Days[1]; d.TMinC.Known || d.TMaxC.Known || d.RainMM != climate.Is(2) || d.Row != 3 {
		t.Errorf("the rest of row 3 should be kept: %+v", d)
	}
	if d := r.Days[2]; d.TMaxC.Known || d.TMinC != climate.Is(1) {
		t.Errorf("the rest of row 5 should be kept: %+v", d)
	}
}

func TestDailyReadsDecimalCommasAndMarks(t *testing.T) {
	want, _ := readDaily(t, "date,tmin_c,tmax_c\n2027-01-01,-1.5,5.25\n2027-01-02,0,6\n")
	for _, text := range []string{
		"\uFEFFdate;tmin_c;tmax_c\r\n2027-01-01;-1,5;5,25\r\n2027-01-02;0;6\r\n",
		"tmax_c\tdate\ttmin_c\n5.25\t2027-01-01\t-1.5\n6\t2027-01-02\t0\n",
		"date,tmin_c,tmax_c\n2027-01-01,\"-1,5\",\"5,25\"\n2027-01-02,0,6\n",
	} {
		got, report := readDaily(t, text)
		if diff := cmp.Diff(want, got); diff != "" || len(report.Refused) > 0 {
			t.Errorf("%q: %s %v", text, diff, report.Refused)
		}
	}
}

func TestDailyWarnsOfFahrenheit(t *testing.T) {
	var b strings.Builder
	b.WriteString("date,tmin_c,tmax_c\n")
	for d := 1; d <= 28; d++ {
		fmt.Fprintf(&b, "2027-02-%02d,%d,%d\n", d, 28+d%5, 45+d%13)
	}
	_, report := readDaily(t, b.String())
	if diff := cmp.Diff([]string{"0:tmax_c:station.looks_fahrenheit"}, told(report.Warnings)); diff != "" {
		t.Error(diff)
	}
}

func TestDailyRefusesFilesOfNoUse(t *testing.T) {
	for text, key := range map[string]string{
		"date,tmin_c\n2027-01-01,2\n":             "station.column_missing",
		"date,tmin_c,tmax_c\n01.02.2027,2,3\n":    "station.no_days",
		"date,tmin_c,tmax_c\n":                    "station.no_days",
		"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR":     "table.binary",
		"":                                        "table.empty",
		"date,tmin_c,tmax_c\n2027-01-01,\"2,3\n,": "table.bad_quotes",
	} {
		_, _, err := station.ReadDaily(strings.NewReader(text), "d.csv")
		if keyOf(err) != key {
			t.Errorf("%q: %v, want %s", text, err, key)
		}
	}
}

func keyOf(err error) string {
	var one *fault.Error
	if errors.As(err, &one) {
		return one.Phrase.Key
	}
	var many fault.List
	if errors.As(err, &many) {
		return many[0].Phrase.Key
	}
	return ""
}

func rewriteDaily(t *testing.T, r *climate.Record) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := station.WriteDaily(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func FuzzReadDaily(f *testing.F) {
	f.Add([]byte("date,tmin_c,tmax_c,rain_mm\n2027-01-01,-1.5,5.25,0.1\n2027-01-02,,6,\n"))
	f.Add([]byte("\uFEFFdate;tmin_c;tmax_c;rh_pct\r\n2027-01-01;-1,5;5,25;1e1\r\n2026-01-02;0;6;\r\n"))
	f.Add([]byte("date\ttmin_c\ttmax_c\n2027-01-01\t9\t5\n2027-01-01\tx\t5\n"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		r, _, err := station.ReadDaily(bytes.NewReader(raw), "d.csv")
		if err != nil {
			return
		}
		once := rewriteDaily(t, r)
		again, report, err := station.ReadDaily(bytes.NewReader(once), "d.csv")
		if err != nil || len(report.Refused) > 0 {
			t.Fatalf("what was written is refused: %v %v\n%s", err, report.Refused, once)
		}
		if twice := rewriteDaily(t, again); !bytes.Equal(once, twice) {
			t.Fatalf("%q became %q", once, twice)
		}
	})
}

func BenchmarkReadDaily(b *testing.B) {
	var text bytes.Buffer
	text.WriteString("date,tmin_c,tmax_c,rain_mm\n")
	for i := range 40 * 365 {
		fmt.Fprintf(&text, "%s,%.1f,%.1f,0.3\n", cal.Date(i), float64(i%7), float64(i%7)+4)
	}
	b.SetBytes(int64(text.Len()))
	for b.Loop() {
		station.ReadDaily(bytes.NewReader(text.Bytes()), "d.csv")
	}
}
