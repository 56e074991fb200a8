package water

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/sun"
)

// row is one line of a file of published figures, by column.
type row map[string]string

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return v
}

// or is the number of a column, or another where it is blank.
func (r row) or(t *testing.T, column string, other float64) float64 {
	t.Helper()
	if r[column] == "" {
		return other
	}
	return r.number(t, column)
}

func published(t *testing.T, file string) (rows []row) {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		if r["mark"] != "seen" || r["source"] == "" {
			t.Fatalf("%s: a row marked %q is no evidence", file, r["mark"])
		}
		rows = append(rows, r)
	}
	return rows
}

// TestWorkedExamples holds every step against the worked examples of the paper,
// to half of their last digit.
func TestWorkedExamples(t *testing.T) {
	for _, r := range published(t, "fao56_examples.csv") {
		got := worked(t, r)
		if want := r.number(t, "expected"); math.Abs(got-want) > r.number(t, "tolerance") {
			t.Errorf("example %s, %s: %.4f, published %s %s", r["example"], r["quantity"], got, r["expected"], r["unit"])
		}
	}
}

// worked computes the quantity of a row.
func worked(t *testing.T, r row) float64 {
	t.Helper()
	low, high := r.or(t, "tmin_c", 0), r.or(t, "tmax_c", 0)
	switch r["quantity"] {
	case "pressure":
		return PressureKPa(r.number(t, "elevation_m"))
	case "psychrometric constant":
		return PsychrometricKPaC(PressureKPa(r.number(t, "elevation_m")))
	case "saturation pressure of the day":
		return MeanSaturationKPa(low, high)
	case "vapour pressure":
		return VapourKPa(r.number(t, "humidity_pct"), MeanSaturationKPa(low, high))
	case "slope":
		return SlopeKPaC((low + high) / 2)
	}
	day, above := weather(t, r)
	place := NewPlace(r.number(t, "elevation_m"))
	clear := place.Cloudless(above, day.RadiationMJ)
	a := place.Air(&day, Light{RadiationMJ: day.RadiationMJ, Cloudless: clear, Sky: 1})
	switch r["quantity"] {
	case "deficit":
		return a.DeficitKPa
	case "net short wave":
		return NetShortMJ(day.RadiationMJ)
	case "net long wave":
		return NetShortMJ(day.RadiationMJ) - a.AvailableMJ
	case "net radiation":
		return a.AvailableMJ
	case "reference evapotranspiration":
		a.AvailableMJ -= r.or(t, "soil_mj", 0)
		return a.ReferenceMM()
	}
	t.Fatalf("no such quantity: %q", r["quantity"])
	return 0
}

// weather is the day of a row, with what is missing made up by chapter 3 of the
// paper, and the radiation above the air.
func weather(t *testing.T, r row) (climate.Day, float64) {
	t.Helper()
	d := climate.Day{TMinC: r.number(t, "tmin_c"), TMaxC: r.number(t, "tmax_c"), WindMS: r.or(t, "wind_ms", 2)}
	d.HumidityPct = climate.HumidityFromDew(d.TMinC, d.TMinC, d.TMaxC)
	if r["vapour_kpa"] != "" {
		d.HumidityPct = 100 * r.number(t, "vapour_kpa") / MeanSaturationKPa(d.TMinC, d.TMaxC)
	}
	latitude, day := r.number(t, "latitude_deg"), int(r.number(t, "day"))
	above := sun.ExtraterrestrialMJ(latitude, day)
	d.RadiationMJ = sun.HargreavesMJ(above, d.TMinC, d.TMaxC, sun.Inland)
	if r["sunshine_h"] != "" {
		d.RadiationMJ = sun.AngstromMJ(above, r.number(t, "sunshine_h"), sun.DaylightH(latitude, day))
	}
	return d, above
}

// TestDaysOfMaricopa holds every day of a year against another program's FAO-56
// (REF-ET), the way a record is worked out.
func TestDaysOfMaricopa(t *testing.T) {
	const tolerance = 0.06
	at := sun.Location{LatitudeDeg: 33.069, LongitudeDeg: -111.97, ElevationM: 361}
	place, worst := NewPlace(at.ElevationM), 0.0
	rows := published(t, "maricopa.csv")
	for i, r := range rows {
		o := climate.Observation{Date: cal.Of(2003, 1, 1) + cal.Date(i), TMinC: climate.Is(r.number(t, "tmin_c")),
			TMaxC: climate.Is(r.number(t, "tmax_c")), RadiationMJ: climate.Is(r.number(t, "radiation_mj")),
			DewC: climate.Is(r.number(t, "dew_c")), WindMS: climate.Is(climate.WindAt2M(r.number(t, "wind_3m_ms"), 3))}
		if o.Date.DayOfYear() != int(r.number(t, "day")) {
			t.Fatalf("row %d is not day %s", i, r["day"])
		}
		got, by, ok := place.Observed(&o, at)
		off := math.Abs(got - r.number(t, "expected"))
		worst = max(worst, off)
		if !ok || by != PenmanMonteith || off > tolerance {
			t.Errorf("day %s: %.3f mm by %s, published %s", r["day"], got, by, r["expected"])
		}
	}
	if len(rows) != 365 {
		t.Errorf("%d days of 365", len(rows))
	}
	t.Logf("largest difference %.3f mm", worst)
}
