package crop

import (
	"math"
	"slices"
	"testing"
)

// The days to emergence of the book's thermal time against the printed days of
// Harrington & Minges 1954, inside the working range of each crop: from the least
// soil temperature to the upper end of the best range of Harrington (Oregon State
// University Extension), or, where that list lacks the crop, up to the
// temperature of the fewest days. Seed half an inch deep at steady temperatures.
func TestEmergenceDaysAgreeWithHarringtonAndMinges(t *testing.T) {
	const tolerance = 0.15 // median over a crop's temperatures; days are printed whole
	book := load(t)
	ranges := map[string][2]float64{}
	for _, r := range readTestdata(t, "emergence_range_harrington.csv") {
		ranges[r["crop"]] = [2]float64{r.number(t, "minimum_c"), r.number(t, "optimum_high_c")}
	}
	points := map[string][][2]float64{}
	for _, r := range readTestdata(t, "emergence_harrington_minges.csv") {
		points[r["crop"]] = append(points[r["crop"]], [2]float64{r.number(t, "temperature_c"), r.number(t, "days")})
	}
	for name, printed := range points {
		limits, listed := ranges[name]
		if !listed {
			limits = [2]float64{0, quickest(printed)}
		}
		u := sownUse(t, book, name)
		var misses []float64
		for _, p := range printed {
			if p[0] < limits[0] || p[0] > limits[1] {
				continue
			}
			days := u.EmergeThermalCd / (min(p[0], u.EmergeOptimumC) - u.EmergeBaseC)
			if p[0] <= u.EmergeBaseC || p[0] >= u.EmergeCeilingC {
				days = math.Inf(1)
			}
			misses = append(misses, math.Abs(days/p[1]-1))
		}
		if len(misses) < 2 {
			t.Errorf("%s: %d temperatures in the working range, too few", name, len(misses))
			continue
		}
		if m := median(misses); m > tolerance {
			t.Errorf("%s: median error %.0f %% of the printed days, over %.0f %%", name, 100*m, 100*tolerance)
		}
	}
}

// sownUse returns a use of the crop that is chiefly sown or raised from seed.
func sownUse(t *testing.T, b *Book, name string) *Use {
	t.Helper()
	c, u, err := b.Find(name)
	if err != nil {
		t.Fatal(err)
	}
	for _, other := range append([]*Use{u}, c.Uses...) {
		if other.Methods[0] == Seed || other.Methods[0] == Plant {
			return other
		}
	}
	if u.Allows(Seed) || u.Allows(Plant) {
		return u
	}
	t.Fatalf("%s has no use that begins with seed", name)
	return nil
}

// quickest returns the temperature of the fewest days, the highest of equals.
func quickest(printed [][2]float64) float64 {
	best := printed[0]
	for _, p := range printed {
		if p[1] <= best[1] {
			best = p
		}
	}
	return best[0]
}

func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}
