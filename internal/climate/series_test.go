package climate

import (
	"compress/gzip"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"garner/internal/cal"
	"garner/internal/sun"
	"garner/internal/table"
)

// station is a station of testdata.
type station struct {
	id       string
	location sun.Location
}

var (
	deBilt   = station{"de_bilt_nl", sun.Location{LatitudeDeg: 52.1, LongitudeDeg: 5.18, ElevationM: 2}}
	valentia = station{"valentia_ie", sun.Location{LatitudeDeg: 51.938, LongitudeDeg: -10.241, ElevationM: 24}}
	seattle  = station{"seattle_us", sun.Location{LatitudeDeg: 47.6, LongitudeDeg: -122.3, ElevationM: 50}}
	lebanon  = station{"lebanon_us", sun.Location{LatitudeDeg: 43.626, LongitudeDeg: -72.305, ElevationM: 182}}
)

// readTable reads a table of testdata, packed or not.
func readTable(t testing.TB, name string) *table.Table {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if !strings.HasSuffix(name, ".gz") {
		return must(t, func() (*table.Table, error) { return table.Read(f, name, 1<<24) })
	}
	packed, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	return must(t, func() (*table.Table, error) { return table.Read(packed, name, 1<<24) })
}

func must[T any](t testing.TB, f func() (T, error)) T {
	t.Helper()
	v, err := f()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// maybe reads a cell that may be empty or a column that may be missing.
func (c cells) maybe(column string) Maybe {
	if c.Column(column) < 0 {
		return Maybe{}
	}
	v, ok := c.Number(c.text(column))
	return Maybe{v, ok}
}

var records sync.Map

// record reads a station's series once.
func (s station) record(t testing.TB) *Record {
	t.Helper()
	if r, ok := records.Load(s.id); ok {
		return r.(*Record)
	}
	tab := readTable(t, s.id+".csv.gz")
	r := &Record{ID: s.id}
	for row := range tab.Rows {
		c := cells{tab, row}
		date := must(t, func() (cal.Date, error) { return cal.Parse(c.text("date")) })
		o := Observation{Date: date, TMinC: c.maybe("tmin_c"), TMaxC: c.maybe("tmax_c"), RainMM: c.maybe("rain_mm"),
			SunH: c.maybe("sun_h"), RadiationMJ: c.maybe("rad_mj_m2"), HumidityPct: c.maybe("rh_pct"), WindMS: c.maybe("wind_ms")}
		if o.TMinC.Known && o.TMaxC.Known && o.TMinC.Value > o.TMaxC.Value {
			o.TMinC, o.TMaxC = Maybe{}, Maybe{} // as in the statistics it is held against
		}
		r.Days = append(r.Days, o)
	}
	records.Store(s.id, r)
	return r
}

func (s station) normals(t testing.TB) Normals {
	t.Helper()
	if s == lebanon {
		return lebanonNormals(t)
	}
	return must(t, func() (Normals, error) { return NormalsOf(s.record(t)) })
}

// lebanonNormals are NOAA's normals of 1981-2010.
func lebanonNormals(t testing.TB) (n Normals) {
	tab := readTable(t, "lebanon_us_monthly.csv")
	for row := range tab.Rows {
		c := cells{tab, row}
		n[row] = MonthNormal{TMinC: c.number("tmin_c"), TMaxC: c.number("tmax_c"), RainMM: c.number("rain_mm")}
	}
	return n
}

const firstYear = 2001

// thousand is 1,000 generated years as a record, and its statistics.
type thousand struct {
	record     *Record
	statistics [12]monthStatistics
}

var thousands sync.Map

// thousandYears makes 1,000 years of a generator, once for each name.
func thousandYears(t testing.TB, name string, make func() (*Generator, error)) thousand {
	t.Helper()
	if y, ok := thousands.Load(name); ok {
		return y.(thousand)
	}
	first := cal.Of(firstYear, 1, 1)
	r := recordOf(first, must(t, make).Days(7, 0, 0, first, int(cal.Of(firstYear+1000, 1, 1)-first)))
	y := thousand{r, statisticsOf(r)}
	thousands.Store(name, y)
	return y
}

// fromNormals are 1,000 years from a station's normals alone.
func (s station) fromNormals(t testing.TB) thousand {
	return thousandYears(t, s.id+" from normals", func() (*Generator, error) { return NewGenerator(s.normals(t), s.location) })
}

// fitted are 1,000 years fitted to a station's record.
func (s station) fitted(t testing.TB) thousand {
	return thousandYears(t, s.id+" fitted", func() (*Generator, error) { return FitGenerator(s.record(t), s.location) })
}
