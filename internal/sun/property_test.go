package sun

import (
	"math"
	"testing"

	"garner/internal/fault"

	"pgregory.net/rapid"
)

// TestHemispheresMirror: the north's day is the south's night, and half a year
// on the south has the north's radiation but for the distance of the sun.
func TestHemispheresMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lat := rapid.Float64Range(0, 66).Draw(t, "latitude")
		day := rapid.IntRange(1, 366).Draw(t, "day")
		if sum := DaylightH(lat, day) + DaylightH(-lat, day); math.Abs(sum-24) > 1e-9 {
			t.Fatalf("daylight north and south add to %v h", sum)
		}
		if d := SunsetAngle(lat, day) - (math.Pi - SunsetAngle(-lat, day)); math.Abs(d) > 1e-9 {
			t.Fatalf("sunset angles differ by %v", d)
		}
		north, south := ExtraterrestrialMJ(lat, day), ExtraterrestrialMJ(-lat, day+182)
		// The orbit's distance swings by 3.3 % either way, half a day is lost.
		if math.Abs(north-south) > 0.07*math.Max(north, south)+0.3 {
			t.Fatalf("half a year on, %v MJ stand against %v MJ", north, south)
		}
	})
}

// TestBounds: everything stays defined and within bounds on the whole globe.
func TestBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lat := rapid.Float64Range(-90, 90).Draw(t, "latitude")
		day := rapid.IntRange(1, 366).Draw(t, "day")
		inRange(t, "day length", DayLengthH(lat, day), 0, 24)
		inRange(t, "daylight", DaylightH(lat, day), 0, 24)
		ra := ExtraterrestrialMJ(lat, day)
		inRange(t, "above the air", ra, 0, 50)
		sunshine := rapid.Float64Range(-1, 30).Draw(t, "sunshine")
		rs := AngstromMJ(ra, sunshine, DaylightH(lat, day))
		inRange(t, "sunshine to radiation", rs, 0.2499*ra, 0.7501*ra)
		inRange(t, "radiation to sunshine", SunshineH(ra, rs, DaylightH(lat, day)), 0, 24)
		k := rapid.Float64Range(-0.5, 1.5).Draw(t, "clearness")
		inRange(t, "daily", DiffuseShare(k, SunsetAngle(lat, day)), 0, 1)
		inRange(t, "hourly", DiffuseShareHourly(k), 0, 1)
		inRange(t, "monthly", DiffuseShareMonthly(k, SunsetAngle(lat, day)), 0, 1)
		at := Location{LatitudeDeg: lat, LongitudeDeg: rapid.Float64Range(-180, 180).Draw(t, "longitude")}
		p := PositionAt(at, rapid.Int64Range(-631152000, 2524608000).Draw(t, "seconds"))
		inRange(t, "elevation", p.ElevationDeg, -90.01, 90)
		inRange(t, "azimuth", p.AzimuthDeg, 0, 360)
		inRange(t, "declination", p.DeclinationDeg, -23.46, 23.46)
	})
}

func inRange(t *rapid.T, what string, v, low, high float64) {
	if !(v >= low && v <= high) { // true for a value that is no number
		t.Fatalf("%s: %v is not within %v to %v", what, v, low, high)
	}
}

// TestSunshineRoundTrip: sunshine to radiation and back gives the same hours.
func TestSunshineRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lat := rapid.Float64Range(-60, 60).Draw(t, "latitude")
		day := rapid.IntRange(1, 365).Draw(t, "day")
		n := DaylightH(lat, day)
		hours := rapid.Float64Range(0, 1).Draw(t, "share") * n
		ra := ExtraterrestrialMJ(lat, day)
		if back := SunshineH(ra, AngstromMJ(ra, hours, n), n); math.Abs(back-hours) > 1e-9 {
			t.Fatalf("%v h came back as %v h", hours, back)
		}
	})
}

// TestClearerIsLessDiffuse: the clearer the day, the less diffuse,
// by the daily fit within its scatter of a hundredth.
func TestClearerIsLessDiffuse(t *testing.T) {
	for _, sunset := range []float64{1.0, 2.0} {
		last := 1.0
		for k := 0.0; k <= 1; k += 0.01 {
			share := DiffuseShare(k, sunset)
			if share > last+0.01 {
				t.Fatalf("sunset %v, clearness %.2f: diffuse rises from %v to %v", sunset, k, last, share)
			}
			last = share
		}
	}
}

// TestLocationCheck: each coordinate out of range is one fault.
func TestLocationCheck(t *testing.T) {
	if faults := (Location{51, -1, 100}).Check(); len(faults) != 0 {
		t.Errorf("a sound place has faults: %v", faults)
	}
	faults := Location{LatitudeDeg: 91, LongitudeDeg: math.NaN(), ElevationM: 9000}.Check()
	if len(faults) != 3 || faults[0].Kind != fault.OutOfRange {
		t.Errorf("want three faults, got %v", faults)
	}
}
