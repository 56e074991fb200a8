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

// published reads a file whose figures were all read in their source.
func published(t *testing.T, file string) []row {
	t.Helper()
	rows := allRows(t, file)
	for _, r := range rows {
		if r["mark"] != "seen" {
			t.Fatalf("%s: a row marked %q is no evidence", file, r["mark"])
		}
	}
	return rows
}

// allRows reads a file of figures that were read in their source or in a
// transcription of it.
func allRows(t *testing.T, file string) (rows []row) {
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
		if r["source"] == "" || r["mark"] != "seen" && r["mark"] != "seen (transcription)" {
			t.Fatalf("%s: a row marked %q is no evidence", file, r["mark"])
		}
		rows = append(rows, r)
	}
	return rows
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
