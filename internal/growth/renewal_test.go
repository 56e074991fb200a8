package growth

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// Common practice, no source: strawberries are renewed in their third or fourth
// year, perennial kale every two or three years, rhubarb is split every five to
// eight years; asparagus is not cut for two years. The yields by age are rounded
// from the same practice.
func TestHeirsArePlantedInTime(t *testing.T) {
	strawberry := crop.Use{Pattern: crop.Perennial, RenewYears: 4, AgeYield: [6]float64{0.1, 1, 0.9, 0.6, 0.4, 0.3}}
	kale := crop.Use{Pattern: crop.Perennial, RenewYears: 3, AgeYield: [6]float64{0.5, 1, 0.9, 0.7, 0.5, 0.4}}
	rhubarb := crop.Use{Pattern: crop.Perennial, RenewYears: 7, AgeYield: [6]float64{0, 0.3, 0.8, 1, 1, 1}}
	asparagus := crop.Use{Pattern: crop.Perennial, RenewYears: 15, AgeYield: [6]float64{0, 0, 0.5, 0.8, 1, 1}}
	for _, c := range []struct {
		name       string
		use        crop.Use
		planted    cal.Date
		old        int
		heir, over cal.Date
	}{
		{"strawberry", strawberry, cal.Of(2025, 8, 20), 0, cal.Of(2028, 8, 20), cal.Of(2029, 8, 20)},
		{"perennial kale bears half at once", kale, cal.Of(2025, 5, 2), 0, cal.Of(2028, 5, 2), cal.Of(2028, 5, 2)},
		{"rhubarb", rhubarb, cal.Of(2021, 11, 18), 0, cal.Of(2026, 11, 18), cal.Of(2028, 11, 18)},
		{"rhubarb three years old when planted", rhubarb, cal.Of(2024, 11, 18), 3, cal.Of(2026, 11, 18), cal.Of(2028, 11, 18)},
		{"asparagus is not cut for two years", asparagus, cal.Of(2022, 4, 6), 0, cal.Of(2035, 4, 6), cal.Of(2037, 4, 6)},
	} {
		got, ok := RenewalOf(&c.use, c.planted, c.old)
		if !ok || got.Heir != c.heir || got.Over != c.over {
			t.Errorf("%s: heir %s, over %s, want %s and %s", c.name, got.Heir, got.Over, c.heir, c.over)
		}
	}
}

// What is not renewed by its age has no heir, and none is planted before its
// elder.
func TestHeirsAreToldOnlyWhereTheyAreDue(t *testing.T) {
	annual := crop.Use{Pattern: crop.Pull, RenewYears: 3, AgeYield: [6]float64{1}}
	untold := crop.Use{Pattern: crop.Perennial, AgeYield: [6]float64{0, 1, 1, 1, 1, 1}}
	barren := crop.Use{Pattern: crop.Perennial, RenewYears: 3, AgeYield: [6]float64{0, 0.2, 0.3, 0.4, 0.4, 0.4}}
	for _, u := range []crop.Use{annual, untold, barren} {
		if r, ok := RenewalOf(&u, cal.Of(2026, 4, 1), 0); ok {
			t.Errorf("%+v for %+v", r, u)
		}
	}
	slow := crop.Use{Pattern: crop.Perennial, RenewYears: 2, AgeYield: [6]float64{0, 0, 0, 1, 1, 1}}
	if r, _ := RenewalOf(&slow, cal.Of(2026, 4, 1), 0); r.Heir != cal.Of(2027, 4, 1) {
		t.Errorf("an heir that is slower than its elder lives goes in on %s", r.Heir)
	}
	if r, ok := RenewalOf(&crop.Use{Pattern: crop.Perennial, RenewYears: 1, AgeYield: [6]float64{1}}, cal.Of(2028, 2, 29), 0); !ok || r.Over != cal.Of(2029, 3, 1) {
		t.Errorf("29 February comes to %s", r.Over)
	}
}
