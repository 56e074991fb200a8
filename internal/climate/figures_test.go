package climate

import (
	"testing"

	"garner/internal/sun"
)

// Every figure says where it is from, and every region has the same figures.
func TestFiguresHaveSources(t *testing.T) {
	for _, f := range []struct {
		raw  []byte
		name string
	}{{spreadCSV, "spread.csv"}, {regimeCSV, "regime.csv"}, {correlationCSV, "correlation.csv"}, {missesCSV, "forecast_misses.csv"}} {
		tab := embedded(f.raw, f.name)
		for row := range tab.Rows {
			c := cells{tab, row}
			if how := c.text("how"); how != "computed" && how != "judgement" && how != "seen" && how != "memory" {
				t.Errorf("%s row %d: %q does not say how sure it is", f.name, tab.Numbers[row], how)
			}
			if c.text("source") == "" {
				t.Errorf("%s row %d has no source", f.name, tab.Numbers[row])
			}
		}
	}
	regional := spreadFigures()
	for name, figures := range regional {
		if name == "all" {
			continue
		}
		for key := range regional[usualRegime] {
			if _, ok := figures[key]; !ok {
				t.Errorf("%s lacks %s", name, key)
			}
		}
	}
	for _, b := range regions() {
		if regional[b.name] == nil {
			t.Errorf("region %s has no figures", b.name)
		}
	}
}

func TestCorrelationsAreSound(t *testing.T) {
	usual := usualCorrelations()
	for s := range usual.same {
		for i := range variables {
			for j := range variables {
				if usual.same[s][i][j] != usual.same[s][j][i] || usual.same[s][i][i] != 1 {
					t.Errorf("season %d: %d,%d is not symmetric", s, i, j)
				}
			}
		}
		if !usual.same[s].isPositive() {
			t.Errorf("season %d: no weather has these correlations", s)
		}
	}
}

// Regions blend: a step over an edge moves no figure much.
func TestRegionsBlend(t *testing.T) {
	n := deBiltNormals()
	var last float64
	for lon := -140.0; lon <= 20; lon += 0.5 {
		p := placeOf(&n, sun.Location{LatitudeDeg: 45, LongitudeDeg: lon})
		weight := 0.0
		for _, r := range p.regimes {
			weight += r.weight
		}
		if weight < 0.999999 || weight > 1.000001 {
			t.Errorf("longitude %v: weights sum to %v", lon, weight)
		}
		v := p.regional("sd_mean_c")
		if lon > -140 && (v-last > 0.6 || last-v > 0.6) {
			t.Errorf("longitude %v: %v after %v", lon, v, last)
		}
		last = v
	}
}
