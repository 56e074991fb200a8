package sun

import (
	"math"
	"strings"
	"testing"
	"time"
)

// modelDeg is what the low-precision sun promises (Meeus 1998, ch. 25), with a
// thousandth for universal time.
const modelDeg = 0.011

// TestPositions holds positions and moments of rise, set, noon and twilight
// against NREL's solar position algorithm, the US Naval Observatory and Meeus;
// the source stands beside each row. A published clock time may be out by its
// last digit, in which the sun turns 15 degrees an hour.
func TestPositions(t *testing.T) {
	for _, r := range published(t, "positions.csv") {
		at := Location{LatitudeDeg: r.number(t, "latitude_deg"), LongitudeDeg: r.number(t, "longitude_deg")}
		moment, err := time.Parse(time.RFC3339, r["utc"])
		if err != nil {
			t.Fatal(err)
		}
		p := PositionAt(at, moment.Unix())
		what := r["id"] + " " + r["utc"] + " " + r["quantity"]
		tolerance := modelDeg + r.number(t, "clock_tolerance_s")*15/3600
		want := r.number(t, "value_deg")
		switch {
		case r["quantity"] == "azimuth":
			near(t, what, p.AzimuthDeg, want, tolerance)
		case r["quantity"] == "declination":
			near(t, what, p.DeclinationDeg, want, tolerance)
		case strings.HasPrefix(r["quantity"], "solar noon"):
			near(t, what, hourAngleDeg(p), 0, tolerance)
		default:
			near(t, what, p.ElevationDeg, want, tolerance)
		}
	}
}

// hourAngleDeg is how far the sun has turned past noon, from its azimuth.
func hourAngleDeg(p Position) float64 {
	sinH := -math.Sin(p.AzimuthDeg*degree) * math.Cos(p.ElevationDeg*degree) / math.Cos(p.DeclinationDeg*degree)
	return math.Asin(sinH) / degree
}

// TestMidnightSun: the sun stays up at Tromso on 5 June 2019 (astral,
// src/test/test_norway.py).
func TestMidnightSun(t *testing.T) {
	tromso := Location{LatitudeDeg: 69.6, LongitudeDeg: 18.95}
	start := time.Date(2019, 6, 5, 0, 0, 0, 0, time.UTC).Unix()
	for minute := int64(0); minute < 24*60; minute += 10 {
		if p := PositionAt(tromso, start+minute*60); p.ElevationDeg < diskDeg {
			t.Fatalf("minute %d: the sun is down at %.2f degrees", minute, p.ElevationDeg)
		}
	}
}

// TestRefraction against the worked example of Reda & Andreas 2003.
func TestRefraction(t *testing.T) {
	near(t, "39.87 degrees", RefractionDeg(39.872046, 820, 11), 0.016332, 1e-6)
	if got := RefractionDeg(-5, 1013, 10); got != 0 {
		t.Errorf("under the horizon: %v, want 0", got)
	}
}

// TestNoonShadow: at noon a wall's shadow lies away from the sun and is height
// over tangent of the elevation long; 1.8 m at 51.5 N throws 6.69 m at the
// winter solstice and 0.96 m at the summer solstice (plane geometry).
func TestNoonShadow(t *testing.T) {
	for _, c := range []struct {
		month  time.Month
		metres float64
	}{{12, 6.690}, {6, 0.959}} {
		moment := time.Date(2027, c.month, 21, 12, 0, 0, 0, time.UTC).Unix()
		p := PositionAt(Location{LatitudeDeg: 51.5}, moment)
		near(t, "shadow", 1.8/math.Tan(p.ElevationDeg*degree), c.metres, 0.01)
		near(t, "azimuth", p.AzimuthDeg, 180, 1)
	}
}
