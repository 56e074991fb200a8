package station_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/station"
)

func sampleFile(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func readAs(t testing.TB, f station.Format, name, text string, o station.Options) *station.Found {
	t.Helper()
	found, err := station.Read(strings.NewReader(text), name, f, o)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// dayOf is a day of what was found.
func dayOf(t testing.TB, f *station.Found, date cal.Date) climate.Observation {
	t.Helper()
	for _, o := range f.Days.Days {
		if o.Date == date {
			return o
		}
	}
	t.Fatalf("no day %v among %d", date, len(f.Days.Days))
	return climate.Observation{}
}

// The values are those of the expected.csv that came with the samples, read off
// the raw text by hand.
func TestGHCNFixedWidth(t *testing.T) {
	f := readAs(t, station.GHCNDaily, "ghcn.dly", string(sampleFile(t, "ghcn.dly")), station.Options{})
	if f.Station.ID != "GME00129634" || len(f.Refused)+len(f.Doubtful)+len(f.Wrong) > 0 {
		t.Errorf("station %+v, refused %v, doubtful %v, wrong %v", f.Station, f.Refused, f.Doubtful, f.Wrong)
	}
	if o := dayOf(t, f, cal.Of(2020, 1, 2)); o.TMaxC != climate.Is(-0.4) {
		t.Errorf("2 January %+v", o)
	}
	if o := dayOf(t, f, cal.Of(2020, 1, 1)); o.TMinC != climate.Is(-7.5) {
		t.Errorf("1 January %+v", o)
	}
	if o := dayOf(t, f, cal.Of(2020, 1, 28)); o.RainMM != climate.Is(12.2) {
		t.Errorf("28 January %+v", o)
	}
	// 31 + 29 + 30 days: the padding of short months is no day and no gap.
	if len(f.Days.Days) != 90 {
		t.Errorf("%d days", len(f.Days.Days))
	}
	if got := told(f.Warnings); len(got) != 1 || !strings.HasSuffix(got[0], "station.days_missing") || f.Warnings[0].Phrase.Args["n"] != 31 {
		t.Errorf("warnings %v", f.Warnings)
	}
}

func TestGHCNByStation(t *testing.T) {
	text := string(sampleFile(t, "ghcn_by_station.csv"))
	for _, with := range []string{"", "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n"} {
		f := readAs(t, station.GHCNStation, "g.csv", with+text, station.Options{})
		if o := dayOf(t, f, cal.Of(1949, 1, 1)); o.TMaxC != climate.Is(28.9) || o.TMinC.Known || f.Rows != 31 || f.Kept != 31 {
			t.Errorf("%q: %+v of %d rows", with, o, f.Rows)
		}
	}
}

func TestGHCNDays(t *testing.T) {
	f := readAs(t, station.GHCNStation, "g.csv", string(sampleFile(t, "ghcn_days.csv")), station.Options{})
	if f.Station.Name != "LOWER MEADOW, XX" || f.Station.LatitudeDeg != climate.Is(51.5) || f.Station.ElevationM != climate.Is(60) {
		t.Errorf("station %+v", f.Station)
	}
	first, third := dayOf(t, f, cal.Of(2021, 3, 1)), dayOf(t, f, cal.Of(2021, 3, 3))
	if first.RainMM != climate.Is(0) || first.TMaxC != climate.Is(10.4) || third.TMaxC.Known || third.TMinC != climate.Is(3.1) {
		t.Errorf("%+v %+v", first, third)
	}
	if o := dayOf(t, f, cal.Of(2021, 3, 2)); o.TMinC != climate.Is(-0.3) || o.RainMM != climate.Is(4.6) {
		t.Errorf("%+v", o)
	}
	if len(f.Warnings) != 1 || f.Warnings[0].Phrase.Key != "station.withdrawn" {
		t.Errorf("warnings %v", f.Warnings)
	}
}

// The excerpt has two of the twelve months and is refused for the other ten.
func TestEPWNeedsAWholeYear(t *testing.T) {
	_, err := station.Read(bytes.NewReader(sampleFile(t, "epw.epw")), "e.epw", station.EPW, station.Options{})
	if got := told(faultsIn(err)); len(got) != 10 || !strings.HasSuffix(got[0], "station.epw_month") {
		t.Errorf("%v", got)
	}
}

// A made-up year of known figures in the rows of the real excerpt: 10 C with a
// swing of 5 about it, 200 W/m2 through twelve hours, half a millimetre of rain at
// noon of each third day, wind of 4 m/s at 10 m, 2.99 at 2 m (FAO-56 eq. 47).
func TestEPWTypicalYear(t *testing.T) {
	f := readAs(t, station.EPW, "e.epw", typicalYear(t, true), station.Options{})
	n := f.Typical
	if n == nil || f.NoRain || f.Rows != 8760 || f.Kept != 8760 || len(f.Refused) > 0 {
		t.Fatalf("%+v", f)
	}
	for m := range n {
		if math.Abs(n[m].TMinC-5) > 0.01 || math.Abs(n[m].TMaxC-15) > 0.01 || math.Abs(n[m].RadiationMJ.Value-8.64) > 0.01 ||
			math.Abs(n[m].WindMS.Value-2.99) > 0.01 || n[m].HumidityPct != climate.Is(80) {
			t.Errorf("month %d: %+v", m+1, n[m])
		}
	}
	if n[0].RainMM != 5.5 { // on 11 days of January
		t.Errorf("rain %g", n[0].RainMM)
	}
	if f.Station.LatitudeDeg != climate.Is(45) || f.Station.ElevationM != climate.Is(250) {
		t.Errorf("station %+v", f.Station)
	}
	if f = readAs(t, station.EPW, "e.epw", typicalYear(t, false), station.Options{}); !f.NoRain {
		t.Error("a year whose rain is marked as missing tells no rain")
	}
}

func typicalYear(t *testing.T, rain bool) string {
	lines := strings.SplitAfter(string(sampleFile(t, "epw.epw")), "\n")
	var b strings.Builder
	b.WriteString(strings.Join(lines[:8], ""))
	cells := strings.Split(strings.TrimSpace(lines[8]), ",")
	for day := cal.Of(2001, 1, 1); day < cal.Of(2002, 1, 1); day++ {
		for hour := 1; hour <= 24; hour++ {
			_, m, d := day.YMD()
			c := append([]string{}, cells...)
			c[0], c[1], c[2], c[3] = fmt.Sprint(1990+m), fmt.Sprint(m), fmt.Sprint(d), fmt.Sprint(hour)
			c[6] = fmt.Sprintf("%.2f", 10-5*math.Cos(2*math.Pi*float64(hour-2)/24))
			c[8], c[13], c[21], c[33] = "80", "0", "4", "999"
			if hour > 6 && hour <= 18 {
				c[13] = "200"
			}
			if rain {
				c[33] = "0"
				if hour == 12 && d%3 == 1 {
					c[33] = "0.5"
				}
			}
			b.WriteString(strings.Join(c, ",") + "\n")
		}
	}
	return b.String()
}

// The first real line holds -1.1 C, a dew point of -7.2 C and wind of 2.6 m/s at
// 10 m; with it, a made-up day around it.
func TestISDLite(t *testing.T) {
	var b strings.Builder
	b.Write(sampleFile(t, "isd_lite.txt"))
	for hour := 5; hour < 24; hour++ {
		rain := []string{"-9999", "    5", "   -1"}[hour%3]
		fmt.Fprintf(&b, "2000 01 01 %02d  %4d   -80 10217   230    26     4 %s -9999\n", hour, 10*hour, rain)
	}
	f := readAs(t, station.ISDLite, "725090-14739-2000", b.String(), station.Options{})
	if f.Station.ID != "725090-14739" || f.Rows != 24 || f.Kept != 24 {
		t.Errorf("%+v", f)
	}
	o := dayOf(t, f, cal.Of(2000, 1, 1))
	if o.TMinC != climate.Is(-1.7) || o.TMaxC != climate.Is(23) || o.RainMM.Known {
		t.Errorf("%+v", o)
	}
	if want := 4.87 / math.Log(67.8*10-5.42) * (26*2 + 36*3 + 26*19) / 240; math.Abs(o.WindMS.Value-want) > 0.001 {
		t.Errorf("wind %g, not %g", o.WindMS.Value, want)
	}
}

// Where the hours tell no rain, the sums of six hours do.
func TestISDLiteRainOfSixHours(t *testing.T) {
	var b strings.Builder
	for hour := range 49 {
		six := "-9999"
		if hour%6 == 0 {
			six = "12"
		}
		fmt.Fprintf(&b, "2021 06 %02d %02d 150 100 10000 0 10 0 -9999 %s\n", 1+hour/24, hour%24, six)
	}
	f := readAs(t, station.ISDLite, "x", b.String(), station.Options{})
	if o := dayOf(t, f, cal.Of(2021, 6, 1)); math.Abs(o.RainMM.Value-4.8) > 1e-9 {
		t.Errorf("four sums of 1.2 mm are %+v", o.RainMM)
	}
}

func TestColumnMap(t *testing.T) {
	text := string(sampleFile(t, "fahrenheit.csv"))
	headings := station.Headings([]byte(text))
	m := station.ColumnMap{Headings: station.JoinHeadings(headings), Date: "Date", DateOrder: "mdy", TMax: "Max Temp (F)", TMin: "Min Temp (F)",
		TempUnit: "F", Rain: "Rain (in)", RainUnit: "in", Wind: "Wind (mph)", WindUnit: "mph", Missing: "M; -99"}
	if got := station.Recognise([]byte(text), []station.ColumnMap{m}); got != station.MappedCSV {
		t.Errorf("recognised as %q", got)
	}
	f := readAs(t, station.MappedCSV, "f.csv", text, station.Options{Maps: []station.ColumnMap{m}})
	if len(f.Refused)+len(f.Wrong)+len(f.Doubtful) > 0 || len(f.Days.Days) != 60 {
		t.Fatalf("refused %v, wrong %v, doubtful %v, %d days", f.Refused, f.Wrong, f.Doubtful, len(f.Days.Days))
	}
	second, fourth := dayOf(t, f, cal.Of(2012, 1, 2)), dayOf(t, f, cal.Of(2012, 1, 4))
	if math.Abs(second.TMaxC.Value-10.556) > 1e-9 || math.Abs(fourth.RainMM.Value-20.32) > 1e-9 {
		t.Errorf("%+v %+v", second, fourth)
	}
	if o := dayOf(t, f, cal.Of(2012, 1, 18)); o.TMinC.Known || !o.TMaxC.Known {
		t.Errorf("an M is not known: %+v", o)
	}
	if o := dayOf(t, f, cal.Of(2012, 1, 21)); o.RainMM != climate.Is(0) {
		t.Errorf("a trace is no rain to measure: %+v", o)
	}
}

func TestColumnMapDates(t *testing.T) {
	for _, c := range []struct{ order, cell string }{
		{"ymd", "2021/3/7"}, {"ymd", "20210307"}, {"", "2021-03-07T00:00"}, {"dmy", "07-mar-2021"}, {"dmy", "7.3.2021"}, {"mdy", "3/7/2021 00:00"},
	} {
		m := station.ColumnMap{Headings: "d | t", Date: "d", DateOrder: c.order, TMax: "t"}
		f := readAs(t, station.MappedCSV, "f.csv", "d,t\n"+c.cell+",9\n", station.Options{Maps: []station.ColumnMap{m}})
		if first, _ := f.Period(); first != cal.Of(2021, 3, 7) {
			t.Errorf("%q by %q is %v", c.cell, c.order, first)
		}
	}
	m := station.ColumnMap{Headings: "d | t", Date: "d", DateOrder: "dmy", TMax: "t"}
	f := readAs(t, station.MappedCSV, "f.csv", "d,t\n7.3.2021,9\n07-Mar-21,9\n31.2.2021,9\n7.3.2021,8\n8.3.2021,n\n", station.Options{Maps: []station.ColumnMap{m}})
	want := "3:d:station.map_date 4:d:station.map_date 5:d:station.date_twice 6:t:station.not_a_number_mapped"
	if got := strings.Join(told(f.Refused), " "); got != want {
		t.Errorf("refused %s", got)
	}
}

func TestRecognise(t *testing.T) {
	for text, want := range map[string]station.Format{
		string(sampleFile(t, "ghcn.dly")):            station.GHCNDaily,
		string(sampleFile(t, "ghcn_by_station.csv")): station.GHCNStation,
		string(sampleFile(t, "ghcn_days.csv")):       station.GHCNStation,
		string(sampleFile(t, "epw.epw")):             station.EPW,
		string(sampleFile(t, "isd_lite.txt")):        station.ISDLite,
		string(sampleFile(t, "archive.csv")):         station.Archive,
		string(sampleFile(t, "fahrenheit.csv")):      "",
		"SQLite format 3\x00...":                     station.ArchiveFile,
		"date,tmin_c,tmax_c\n2021-01-01,1,2\n":       station.DailyCSV,
		"\ufeffdate;tmin;tmax\n2021-01-01;1,5;2\n":   station.DailyCSV,
		"time,temp_c\n2021-01-01T00:00,2\n":          station.HourlyCSV,
		"dear diary\nit rained\n":                    "",
		"":                                           "",
	} {
		if got := station.Recognise([]byte(text), nil); got != want {
			t.Errorf("%.40q is %q, not %q", text, got, want)
		}
	}
}
