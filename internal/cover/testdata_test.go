package cover

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/climate"
)

// row is one line of a file of figures, by column.
type row map[string]string

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return v
}

// conditions is the day outside, and the radiation above the air, of a row. Rain
// and humidity are 2 mm and 80 % where the row has none.
func (r row) conditions(t *testing.T) (climate.Day, float64) {
	t.Helper()
	day := climate.Day{TMinC: r.number(t, "tmin_c"), TMaxC: r.number(t, "tmax_c"), RainMM: 2,
		RadiationMJ: r.number(t, "radiation_mj"), WindMS: r.number(t, "wind_ms"), HumidityPct: 80}
	if r["humidity_pct"] != "" {
		day.RainMM, day.HumidityPct = r.number(t, "rain_mm"), r.number(t, "humidity_pct")
	}
	return day, r.number(t, "extraterrestrial_mj")
}

// figures reads a file of figures; every row has a source and a mark.
func figures(t *testing.T, file string) []row {
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
	rows := make([]row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		if r["source"] == "" || r["mark"] == "" {
			t.Fatalf("%s: a row without source or mark: %v", file, line)
		}
		rows = append(rows, r)
	}
	return rows
}

func mustLookup(t testing.TB, kind Kind) *Cover {
	t.Helper()
	c, err := Lookup(kind)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// effect is one quantity of a cover on a day outside.
func effect(t *testing.T, c *Cover, quantity string, out climate.Day, extraterrestrialMJ float64) float64 {
	t.Helper()
	in := c.Under(out, extraterrestrialMJ)
	switch quantity {
	case "night lift":
		return in.TMinC - out.TMinC
	case "maximum lift":
		return in.TMaxC - out.TMaxC
	case "mean lift":
		return in.MeanC() - out.MeanC()
	case "round the clock lift":
		// The mean over all hours: the sun's part of the lift is taken as half a
		// sine over eleven hours of spring daylight.
		night, day := in.TMinC-out.TMinC, in.TMaxC-out.TMaxC
		return night + (day-night)*2/math.Pi*11/24
	case "minimum":
		return in.TMinC
	case "maximum":
		return in.TMaxC
	case "light":
		return 100 * in.RadiationMJ / out.RadiationMJ
	case "rain":
		return 100 * in.RainMM / out.RainMM
	case "wind":
		return 100 * in.WindMS / out.WindMS
	}
	t.Fatalf("no such quantity: %s", quantity)
	return 0
}
