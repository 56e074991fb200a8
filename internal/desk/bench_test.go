package desk

import (
	"runtime"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/outlook"
)

func sampleHolding(t testing.TB) *holding.Holding {
	t.Helper()
	h, err := Sample("")
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func demoSetting(t testing.TB, h *holding.Holding) outlook.Setting {
	t.Helper()
	b, err := bookOf(h)
	if err != nil {
		t.Fatal(err)
	}
	return outlook.Setting{Holding: h, Book: b, Today: h.Today, From: h.Today.Monday(), Weeks: usualWeeks, Years: usualYears, Seed: 1, Workers: runtime.GOMAXPROCS(0)}
}

// BenchmarkDemoTable times the demo's table, 78 weeks and 200 years of weather,
// from cold.
func BenchmarkDemoTable(b *testing.B) {
	h := sampleHolding(b)
	s := demoSetting(b, h)
	for b.Loop() {
		if _, err := outlook.Compute(s, outlook.NewMemory()); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkEditOneBed times the demo's table after one planting was moved by a
// day, with what was computed before in memory.
func BenchmarkEditOneBed(b *testing.B) {
	h := sampleHolding(b)
	m := outlook.NewMemory()
	if _, err := outlook.Compute(demoSetting(b, h), m); err != nil {
		b.Fatal(err)
	}
	at := 0
	for i, p := range h.Plantings {
		if p.Date > h.Today {
			at = i
			break
		}
	}
	for b.Loop() {
		h.Plantings[at].Date++
		if _, err := outlook.Compute(demoSetting(b, h), m); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSummary times the adding up of a table to weeks and odds.
func BenchmarkSummary(b *testing.B) {
	t, err := outlook.Compute(demoSetting(b, sampleHolding(b)), outlook.NewMemory())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		t.Summarise(false)
	}
}

// BenchmarkWindow times one planting window, without the start of the program.
func BenchmarkWindow(b *testing.B) {
	var n climate.Normals
	for i, m := range [12][3]float64{{1, 7, 60}, {1, 8, 45}, {2, 11, 45}, {4, 14, 45}, {7, 17, 50}, {10, 20, 50}, {12, 23, 45}, {12, 22, 55}, {10, 19, 50}, {7, 15, 70}, {4, 10, 65}, {2, 8, 60}} {
		n[i] = climate.MonthNormal{TMinC: m[0], TMaxC: m[1], RainMM: m[2]}
	}
	for b.Loop() {
		if _, err := Window(WindowOptions{Crop: "leek", Site: Site{LatitudeDeg: 51.5, ElevationM: 20}, Normals: &n}); err != nil {
			b.Fatal(err)
		}
	}
}

// A long table must not need more than the year it is asked for.
func TestOutlookWeeks(t *testing.T) {
	r, err := Outlook(sampleHolding(t), OutlookOptions{Weeks: 10, Years: 3, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Weeks) != 10 || r.Weeks[0] != cal.Of(2027, 1, 4) || len(r.Share) != 10 {
		t.Errorf("weeks %v, shares %d", r.Weeks, len(r.Share))
	}
}
