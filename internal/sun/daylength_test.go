package sun

import (
	"testing"
	"time"

	"garner/internal/cal"
)

// TestDayLengths takes the day length from each published pair of sunrise and
// sunset. A mean year stands in for the real one: two minutes, and the rounding
// of both clock times.
func TestDayLengths(t *testing.T) {
	type key struct{ id, lat, long, date string }
	rise := map[key]time.Time{}
	pairs := 0
	for _, r := range published(t, "positions.csv") {
		k := key{r["id"], r["latitude_deg"], r["longitude_deg"], r["date"]}
		moment, _ := time.Parse(time.RFC3339, r["utc"])
		switch r["quantity"] {
		case "sunrise":
			rise[k] = moment
		case "sunset":
			risen, ok := rise[k]
			if !ok {
				continue
			}
			pairs++
			date, err := cal.Parse(r["date"])
			if err != nil {
				t.Fatal(err)
			}
			tolerance := 2.0/60 + 2*r.number(t, "clock_tolerance_s")/3600
			near(t, r["id"]+" "+r["date"], DayLengthH(r.number(t, "latitude_deg"), date.DayOfYear()),
				moment.Sub(risen).Hours(), tolerance)
		}
	}
	if pairs < 20 {
		t.Errorf("only %d days checked", pairs)
	}
}

// TestPolarDays: defined answers where the sun does not rise or set.
func TestPolarDays(t *testing.T) {
	for _, lat := range []float64{70, 80, 90} {
		for _, c := range []struct {
			latitude float64
			day      int
			hours    float64
			sunset   float64
		}{{lat, 172, 24, 3.14159265}, {lat, 355, 0, 0}, {-lat, 172, 0, 0}, {-lat, 355, 24, 3.14159265}} {
			near(t, "day length", DayLengthH(c.latitude, c.day), c.hours, 0)
			near(t, "sunset angle", SunsetAngle(c.latitude, c.day), c.sunset, 1e-8)
		}
	}
	if got := ExtraterrestrialMJ(80, 355); got != 0 {
		t.Errorf("polar night: %v MJ, want 0", got)
	}
}
