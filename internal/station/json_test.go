package station

import (
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
)

func readJSON(t *testing.T, fieldMapped, content string) ([]string, Report) {
	t.Helper()
	m, err := ReadMap(fieldMapped)
	if err != nil {
		t.Fatal(err)
	}
	r, report, err := ReadJSON([]byte(content), "forecast", m, time.FixedZone("", 2*3600))
	if err != nil {
		return []string{err.Error()}, report
	}
	var out []string
	var b strings.Builder
	if err := WriteDaily(&b, r); err != nil {
		t.Fatal(err)
	}
	out = append(out, strings.Split(strings.TrimSpace(b.String()), "\n")...)
	return out, report
}

// Columns of days side by side, items one after another, hours, and seconds since
// 1970 come to the same daily record.
func TestJSONByItsMap(t *testing.T) {
	want := "date,tmin_c,tmax_c,rain_mm|2027-05-01,10,20,25.4|2027-05-02,0,5,0"
	for name, c := range map[string]struct{ fieldMapped, content string }{
		"our own": {"", `{"days":[{"date":"2027-05-01","tmin_c":10,"tmax_c":20,"rain_mm":25.4},{"date":"2027-05-02","tmin_c":0,"tmax_c":5,"rain_mm":0}]}`},
		"side by side": {"date=daily.time; tmin_c=daily.low F; tmax_c=daily.high F; rain_mm=daily.rain in",
			`{"daily":{"time":["2027-05-01","2027-05-02"],"low":[50,32],"high":[68,41],"rain":[1,0]}}`},
		"deep": {"date=out.list.t.day; tmin_c=out.list.v.low; tmax_c=out.list.v.high; rain_mm=out.list.v.wet cm",
			`{"out":{"list":[{"t":{"day":"2027-05-01T00:00+02:00"},"v":{"low":10,"high":20,"wet":2.54}},{"t":{"day":"2027-05-02"},"v":{"low":0,"high":5,"wet":0}}]}}`},
		"seconds": {"date=d.at; tmin_c=d.low; tmax_c=d.high; rain_mm=d.rain", // 22:30 UTC is the next day at +02:00
			`{"d":[{"at":1809124200,"low":10,"high":20,"rain":25.4},{"at":1809210600,"low":0,"high":5,"rain":0}]}`},
		"hours": {"time=h.time; temp_c=h.t; rain_mm=h.r",
			`{"h":{"time":["2027-05-01T00:00","2027-05-01T06:00","2027-05-01T12:00","2027-05-01T18:00","2027-05-02T00:00","2027-05-02T06:00","2027-05-02T12:00","2027-05-02T18:00","2027-05-03T00:00"],
			"t":[12,10,20,15,3,0,5,4,9],"r":[5.4,10,null,10,0,0,0,0,7]}}`},
	} {
		if got, _ := readJSON(t, c.fieldMapped, c.content); strings.Join(got, "|") != want {
			t.Errorf("%s: %s\nwant %s", name, strings.Join(got, "|"), want)
		}
	}
}

// Wind at 10 m is brought down to 2 m by FAO-56 equation 47; the paper's example 14
// has 3.2 m/s at 10 m as 2.4 m/s at 2 m.
func TestJSONWindComesDown(t *testing.T) {
	got, _ := readJSON(t, "date=d.date; tmin_c=d.l; tmax_c=d.h; wind_ms=d.w km/h @10", `{"d":[{"date":"2027-05-01","l":1,"h":2,"w":11.52}]}`)
	if len(got) < 2 || !strings.HasPrefix(got[1], "2027-05-01,1,2,2.39") {
		t.Errorf("got %v, want 2.39 m/s", got)
	}
}

// What cannot be is left out and told; rubbish is one fault.
func TestJSONThatIsWrong(t *testing.T) {
	for content, want := range map[string]string{
		`<html>`:     "station.json_broken",
		`{"days":3}`: "station.json_path",
		`[]`:         "station.json_path",
		`{"days":[{"date":"soon","tmin_c":1,"tmax_c":2}]}`:                                   "station.json_no_days",
		`{"days":[{"date":"2027-05-01","tmin_c":1}]}`:                                        "station.json_no_days",
		`{"days":[{"date":"2027-05-01","tmin_c":9,"tmax_c":2}]}`:                             "station.json_no_days",
		`{"days":[{"date":"2027-05-01","tmin_c":"cold","tmax_c":2}]}`:                        "station.json_no_days",
		`{"days":{"date":["2027-05-01","2027-05-02"],"tmin_c":[1],"tmax_c":[2,3],"x":null}}`: "station.json_lengths",
	} {
		if got, _ := readJSON(t, "", content); len(got) != 1 || !strings.Contains(got[0], want) {
			t.Errorf("%s: %v, want %s", content, got, want)
		}
	}
	got, report := readJSON(t, "", `{"days":[{"date":"2027-05-01","tmin_c":1,"tmax_c":2,"rain_mm":-4},{"date":"2027-05-02","tmin_c":400,"tmax_c":2}]}`)
	if len(got) != 2 || len(report.Refused) != 2 || report.Kept != 1 {
		t.Errorf("%v with %v", got, report.Refused)
	}
}

func TestMapThatIsWrong(t *testing.T) {
	for given, want := range map[string]string{
		"date":                         "station.map_entry",
		"date=a; cold=b":               "station.map_quantity",
		"date=a; tmin_c=b X; tmax_c=c": "station.map_unit",
		"date=a; tmin_c=b":             "station.map_needs",
		"tmin_c=b; tmax_c=c":           "station.map_needs",
		"time=a; rain_mm=b":            "station.map_needs",
		"date=a; tmin_c=b; tmax_c=c; wind_ms=d @x": "station.map_height",
	} {
		if _, err := ReadMap(given); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", given, err, want)
		}
	}
}

func FuzzReadJSON(f *testing.F) {
	f.Add("date=a.b; tmin_c=a.c F; tmax_c=a.d", `{"a":[{"b":"2027-05-01","c":1,"d":[2,[3]]}]}`)
	f.Add("time=a; temp_c=b", `{"a":[1,2],"b":[1e308,null]}`)
	f.Fuzz(func(t *testing.T, fieldMapped, content string) {
		m, err := ReadMap(fieldMapped)
		if err != nil {
			return
		}
		r, _, err := ReadJSON([]byte(content), "x", m, nil)
		if err != nil {
			return
		}
		last := cal.None
		for _, o := range r.Days {
			if o.Date <= last || o.TMinC.Value > o.TMaxC.Value {
				t.Fatalf("%v after %s", o, last)
			}
			last = o.Date
		}
	})
}
